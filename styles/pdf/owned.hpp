#pragma once

#include <memory>

namespace benchcard::pdf {

/// What a C library made and its function `Free` throws away.
template <auto Free> struct freed_by {
    template <typename T> void operator()(T* thing) const noexcept { Free(thing); }
};
template <typename T, auto Free> using owned = std::unique_ptr<T, freed_by<Free>>;

} // namespace benchcard::pdf
