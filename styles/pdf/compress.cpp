#include "styles/pdf/compress.hpp"

#include <hpdf_doc.h>
#include <hpdf_fontdef.h>
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

/// What is made once, and used for every stream.
struct compressor::state {
    std::unique_ptr<libdeflate_compressor, decltype(&libdeflate_free_compressor)> with{
        libdeflate_alloc_compressor(level), &libdeflate_free_compressor};
    std::string plain, deflated;

    /// How many bytes of `deflated` it takes; 0 after an error.
    std::size_t deflate() {
        if (!with) return 0;
        const auto most = libdeflate_zlib_compress_bound(with.get(), plain.size());
        if (deflated.size() < most) deflated.resize(most);
        return libdeflate_zlib_compress(with.get(), plain.data(), plain.size(), deflated.data(),
                                        deflated.size());
    }

    /// False after an error; else what the dictionary has behind it is compressed.
    bool compress(HPDF_Dict whose) {
        take_bytes(whose->stream, plain);
        const auto size = static_cast<HPDF_UINT>(deflate());
        if (size == 0) return false;
        auto* stream = HPDF_MemStream_New(whose->mmgr, size);
        if (!stream) return false;
        HPDF_Stream_Free(whose->stream);
        whose->stream = stream;
        whose->filter = HPDF_STREAM_FILTER_NONE;
        whose->write_fn = name_filter;
        const auto* bytes = reinterpret_cast<const HPDF_BYTE*>(deflated.data());
        return HPDF_Stream_Write(stream, bytes, size) == HPDF_OK;
    }
};

compressor::compressor() : state_(std::make_unique<state>()) {}
compressor::~compressor() = default;

bool compressor::compress_page(HPDF_Page drawn) {
    auto* page = static_cast<HPDF_PageAttr>(drawn->attr);
    if (!state_->compress(page->contents)) return false;
    page->stream = page->contents->stream;
    return true;
}

bool compressor::compress_font(HPDF_Font embedded) {
    auto* font = static_cast<HPDF_FontAttr>(embedded->attr);
    embedded->filter = HPDF_STREAM_FILTER_NONE; // the library's streams of a font take over its own
    if (!embedded->before_write_fn || embedded->before_write_fn(embedded) != HPDF_OK) return false;
    auto* program = HPDF_Dict_GetItem(font->fontdef->descriptor, "FontFile2", HPDF_OCLASS_DICT);
    for (auto* part : {static_cast<HPDF_Dict>(program), font->map_stream, font->cmap_stream})
        if (!part || !state_->compress(part)) return false;
    return true;
}

} // namespace benchcard::pdf
