#include "styles/pdf/haru.hpp"

#include <cstring>
#include <exception>
#include <hpdf_doc.h>
#include <hpdf_utils.h>
#include <limits>
#include <new>
#include <utility>

namespace benchcard::pdf {

namespace {

extern "C" void remember_first(HPDF_STATUS code, HPDF_STATUS detail, void* where) noexcept {
    auto* error = static_cast<first_error*>(where);
    if (error->code == 0) *error = {code, detail};
}

/// Where a file is written to, and whether there was no room for it.
struct growing_file {
    std::string bytes;
    bool has_no_room = false;
};

extern "C" HPDF_STATUS add_to_file(HPDF_Stream to, const HPDF_BYTE* bytes,
                                   HPDF_UINT size) noexcept {
    auto* file = static_cast<growing_file*>(to->attr);
    try {
        file->bytes.append(reinterpret_cast<const char*>(bytes), size);
    } catch (const std::exception&) { // it would not come through the library
        file->has_no_room = true;
        return HPDF_FAILD_TO_ALLOC_MEM;
    }
    return HPDF_OK;
}

} // namespace

owned_document new_document(first_error& error) {
    owned_document made(HPDF_New(remember_first, &error));
    if (!made) return made;
    HPDF_SetCompressionMode(made.get(), HPDF_COMP_ALL);
    return made;
}

void take_bytes(HPDF_Stream in_memory, std::string& bytes) {
    bytes.clear();
    bytes.reserve(in_memory->size);
    for (HPDF_UINT i = 0; i < HPDF_MemStream_GetBufCount(in_memory); ++i) {
        HPDF_UINT length = 0;
        const auto* buffer = HPDF_MemStream_GetBufPtr(in_memory, i, &length);
        if (buffer) bytes.append(reinterpret_cast<const char*>(buffer), length);
    }
}

std::string saved(HPDF_Doc document) {
    growing_file file;
    document->stream = HPDF_CallbackWriter_New(document->mmgr, add_to_file, &file);
    const bool is_saved = document->stream && HPDF_SaveToStream(document) == HPDF_OK;
    HPDF_Stream_Free(document->stream);
    document->stream = nullptr;
    if (file.has_no_room) throw std::bad_alloc();
    return is_saved ? std::move(file.bytes) : std::string{};
}

} // namespace benchcard::pdf

// The library's own of these go byte by byte, and it clears half a kilobyte for each text: a tenth
// of all the work of printing. A program's definitions are taken before a library's (System V ABI,
// part "Dynamic Linking"); where they were not, all would go as well, only slower.

HPDF_BYTE* HPDF_MemCpy(HPDF_BYTE* out, const HPDF_BYTE* in, HPDF_UINT n) {
    return n == 0 ? out : static_cast<HPDF_BYTE*>(std::memmove(out, in, n)) + n;
}

HPDF_UINT HPDF_StrLen(const char* s, HPDF_INT maxlen) {
    if (!s) return 0;
    const auto most =
        maxlen < 0 ? std::numeric_limits<HPDF_UINT>::max() : static_cast<HPDF_UINT>(maxlen);
    return static_cast<HPDF_UINT>(strnlen(s, most));
}

void* HPDF_MemSet(void* s, HPDF_BYTE c, HPDF_UINT n) {
    return n == 0 ? s : static_cast<HPDF_BYTE*>(std::memset(s, c, n)) + n;
}
