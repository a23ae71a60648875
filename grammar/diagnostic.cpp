#include "grammar/diagnostic.hpp"

namespace benchcard::grammar {

std::string_view name_of(severity level) {
    switch (level) {
    case severity::error:
        return "error";
    case severity::warning:
        return "warning";
    case severity::hint:
        return "hint";
    }
    return "";
}

} // namespace benchcard::grammar
