#pragma once

#include <string>
#include <string_view>

namespace benchcard::grammar {

/// A text mapped by options of utf8proc (`UTF8PROC_CASEFOLD`), after which it is still UTF-8; as it
/// is where it is not.
std::string unicode_mapped(std::string_view text, int options);

} // namespace benchcard::grammar
