#pragma once

#include "grammar/diagnostic.hpp"
#include "grammar/source.hpp"

#include <set>
#include <string>
#include <vector>

namespace benchcard::commands {

/// Messages and the texts they are on.
struct told {
    grammar::diagnostics messages;
    std::vector<grammar::source> sources;
};

/// What was said of files that several recipes use, so that it is said once.
class said_once {
  public:
    /// Takes out what was said before of the same place.
    void drop_known(told& of);

  private:
    std::set<std::string> said_;
};

} // namespace benchcard::commands
