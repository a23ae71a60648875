#include "styles/pdf/haru.hpp"

namespace benchcard::pdf {

namespace {

extern "C" void remember_first(HPDF_STATUS code, HPDF_STATUS detail, void* where) noexcept {
    auto* error = static_cast<first_error*>(where);
    if (error->code == 0) *error = {code, detail};
}

} // namespace

owned_document new_document(first_error& error) {
    owned_document made(HPDF_New(remember_first, &error));
    if (!made) return made;
    HPDF_SetCompressionMode(made.get(), HPDF_COMP_ALL);
    return made;
}

} // namespace benchcard::pdf
