#include "any_text.hpp"
#include "target.hpp"

/// A recipe's text, read: whatever the bytes, every place lies within them.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    using namespace benchcard;
    fuzz::must_be_faultless(grammar::fault_of_reading(fuzz::text_of(data, size)));
    return 0;
}
