#pragma once

#include <cstddef>
#include <cstdint>
#include <stdexcept>
#include <string>
#include <string_view>

/// What each target is: takes any bytes, and throws where what must hold of them does not.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace benchcard::fuzz {

inline std::string text_of(const std::uint8_t* data, std::size_t size) {
    return std::string(reinterpret_cast<const char*>(data), size);
}

/// Ends the run with what is wrong; nothing is where it is empty.
inline void must_be_faultless(const std::string& fault) {
    if (!fault.empty()) throw std::logic_error(fault);
}

inline void must(bool holds, const char* what) {
    if (!holds) throw std::logic_error(what);
}

} // namespace benchcard::fuzz
