#include "compiler/commands/said_once.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace benchcard::commands {

void said_once::drop_known(told& of) {
    std::erase_if(of.messages, [&](const auto& m) {
        return !said_
                    .insert(fmt::format("{}:{}:{}:{}:{}", of.sources[m.where.file].name(),
                                        m.where.begin, m.where.end, m.kind, m.message))
                    .second;
    });
}

} // namespace benchcard::commands
