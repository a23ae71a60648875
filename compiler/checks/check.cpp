#include "compiler/checks/checks.hpp"

#include <algorithm>

namespace benchcard::checks {

grammar::diagnostics check(const recipe::recipe& r) {
    grammar::diagnostics messages;
    if (!r.has_product) return messages;
    check_demand(r, messages);
    check_amounts(r, messages);
    return messages;
}

} // namespace benchcard::checks
