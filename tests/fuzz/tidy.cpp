#include "input.hpp"
#include "target.hpp"
#include "tidy_fault.hpp"

/// A recipe put in order: once is enough, and it weighs the same and the same is said of it.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    using namespace benchcard;
    const auto in = fuzz::input_in(fuzz::text_of(data, size));
    fuzz::must_be_faultless(language::fault_of_tidying(in.recipe, in.files));
    return 0;
}
