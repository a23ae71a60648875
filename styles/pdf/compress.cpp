#include "styles/pdf/compress.hpp"

#include <hpdf_objects.h>
#include <hpdf_pages.h>
#include <hpdf_streams.h>
#include <libdeflate.h>
#include <memory>
#include <string>

namespace benchcard::pdf {

namespace {

/// The library drops a filter that it does not apply itself, so this is said as it writes.
HPDF_STATUS name_filter(HPDF_Dict, HPDF_Stream to) {
    return HPDF_Stream_WriteStr(to, "/Filter [/FlateDecode]\012");
}

std::string all_of(HPDF_Stream stream) {
    std::string bytes(HPDF_Stream_Size(stream), '\0');
    auto size = static_cast<HPDF_UINT>(bytes.size());
    HPDF_Stream_Seek(stream, 0, HPDF_SEEK_SET);
    HPDF_Stream_Read(stream, reinterpret_cast<HPDF_BYTE*>(bytes.data()), &size);
    bytes.resize(size);
    return bytes;
}

std::string deflated(const std::string& bytes) {
    constexpr int level = 4; // a third of zlib's time, and as small
    const std::unique_ptr<libdeflate_compressor, decltype(&libdeflate_free_compressor)> with(
        libdeflate_alloc_compressor(level), &libdeflate_free_compressor);
    if (!with) return {};
    std::string result(libdeflate_zlib_compress_bound(with.get(), bytes.size()), '\0');
    result.resize(libdeflate_zlib_compress(with.get(), bytes.data(), bytes.size(), result.data(),
                                           result.size()));
    return result;
}

} // namespace

bool compress(HPDF_Doc document, HPDF_Page drawn) {
    auto* page = static_cast<HPDF_PageAttr>(drawn->attr);
    const auto bytes = deflated(all_of(page->stream));
    if (bytes.empty()) return false;
    const auto size = static_cast<HPDF_UINT>(bytes.size());
    auto* stream = HPDF_MemStream_New(document->mmgr, size);
    if (!stream) return false;
    HPDF_Stream_Free(page->stream);
    page->contents->stream = page->stream = stream;
    page->contents->filter = HPDF_STREAM_FILTER_NONE;
    page->contents->write_fn = name_filter;
    return HPDF_Stream_Write(stream, reinterpret_cast<const HPDF_BYTE*>(bytes.data()), size) ==
           HPDF_OK;
}

} // namespace benchcard::pdf
