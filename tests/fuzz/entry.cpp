#include "target.hpp"

extern "C" int BENCHCARD_TARGET(const std::uint8_t* data, std::size_t size);

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    return BENCHCARD_TARGET(data, size);
}
