#include "styles/pdf/compress.hpp"

#include <hpdf_objects.h>
#include <hpdf_pages.h>
#include <hpdf_streams.h>
#include <libdeflate.h>

namespace benchcard::pdf {

namespace {

/// The library drops a filter that it does not apply itself, so this is said as it writes.
HPDF_STATUS name_filter(HPDF_Dict, HPDF_Stream to) {
    return HPDF_Stream_WriteStr(to, "/Filter [/FlateDecode]\012");
}

constexpr int level = 1; // a quarter of zlib's time, and hardly larger

} // namespace

/// What is made once, and used for every page.
struct compressor::state {
    std::unique_ptr<libdeflate_compressor, decltype(&libdeflate_free_compressor)> with{
        libdeflate_alloc_compressor(level), &libdeflate_free_compressor};
    std::string drawn, deflated;

    /// How many bytes of `deflated` it takes; 0 after an error.
    std::size_t deflate() {
        if (!with) return 0;
        const auto most = libdeflate_zlib_compress_bound(with.get(), drawn.size());
        if (deflated.size() < most) deflated.resize(most);
        return libdeflate_zlib_compress(with.get(), drawn.data(), drawn.size(), deflated.data(),
                                        deflated.size());
    }
};

compressor::compressor() : state_(std::make_unique<state>()) {}
compressor::~compressor() = default;

bool compressor::compress(HPDF_Doc document, HPDF_Page drawn) {
    auto* page = static_cast<HPDF_PageAttr>(drawn->attr);
    take_bytes(page->stream, state_->drawn);
    const auto size = static_cast<HPDF_UINT>(state_->deflate());
    if (size == 0) return false;
    auto* stream = HPDF_MemStream_New(document->mmgr, size);
    if (!stream) return false;
    HPDF_Stream_Free(page->stream);
    page->contents->stream = page->stream = stream;
    page->contents->filter = HPDF_STREAM_FILTER_NONE;
    page->contents->write_fn = name_filter;
    const auto* bytes = reinterpret_cast<const HPDF_BYTE*>(state_->deflated.data());
    return HPDF_Stream_Write(stream, bytes, size) == HPDF_OK;
}

} // namespace benchcard::pdf
