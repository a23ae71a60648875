#include "styles/pdf/painting.hpp"

#include "styles/layout/utf8.hpp"

#include <cstddef>
#include <ctime>
#include <fmt/format.h>
#include <hpdf_doc.h>
#include <hpdf_objects.h>

namespace benchcard::pdf {

namespace {

/// At most so many characters of a text: titles in a PDF are for finding, not for reading.
std::string shortened(const std::string& text) {
    constexpr std::size_t most = 250;
    std::string out;
    for (const auto code : layout::characters_of(text).substr(0, most)) layout::append(out, code);
    return out;
}

void append_unit(std::string& to, char32_t unit) {
    to += static_cast<char>(unit >> 8);
    to += static_cast<char>(unit & 0xFF);
}

/// A text string in UTF-16, its bytes from the largest down (ISO 32000-1, 7.9.2.2). The library's
/// own way to it keeps a table of all characters there are.
HPDF_Binary text_string(HPDF_Doc document, const std::string& text) {
    std::string bytes = "\xFE\xFF";
    for (const auto code : layout::characters_of(text)) {
        if (code > 0xFFFF) append_unit(bytes, 0xD800 + ((code - 0x10000) >> 10));
        append_unit(bytes, code > 0xFFFF ? 0xDC00 + (code & 0x3FF) : code);
    }
    return HPDF_Binary_New(document->mmgr, reinterpret_cast<HPDF_BYTE*>(bytes.data()),
                           static_cast<HPDF_UINT>(bytes.size()));
}

void describe(HPDF_Doc document, const document_info& info) {
    HPDF_SetInfoAttr(document, HPDF_INFO_PRODUCER, ""); // makes the dictionary written to below
    HPDF_Dict_Add(document->info, "Title", text_string(document, shortened(info.title)));
    HPDF_Dict_Add(document->info, "Producer", text_string(document, shortened(info.producer)));
    HPDF_SetViewerPreference(document, HPDF_FIT_WINDOW); // makes the dictionary written to below
    auto* root = document->catalog;
    HPDF_Dict_Add(root, "Lang",
                  HPDF_String_New(document->mmgr, shortened(info.language).c_str(), nullptr));
    auto* preferences =
        static_cast<HPDF_Dict>(HPDF_Dict_GetItem(root, "ViewerPreferences", HPDF_OCLASS_DICT));
    if (!preferences) return;
    HPDF_Dict_AddBoolean(preferences, "DisplayDocTitle", HPDF_TRUE);
    if (info.duplex)
        HPDF_Dict_AddName(preferences, "Duplex",
                          *info.duplex == layout::flip::long_edge ? "DuplexFlipLongEdge"
                                                                  : "DuplexFlipShortEdge");
}

/// A date in UTC. (Written with `Z` the library makes a date that no reader takes.)
void date(HPDF_Doc document, std::int64_t seconds) {
    const auto time = static_cast<std::time_t>(seconds);
    std::tm parts{};
    if (!gmtime_r(&time, &parts)) return;
    const HPDF_Date when{parts.tm_year + 1900,
                         parts.tm_mon + 1,
                         parts.tm_mday,
                         parts.tm_hour,
                         parts.tm_min,
                         parts.tm_sec,
                         '+',
                         0,
                         0};
    HPDF_SetInfoDateAttr(document, HPDF_INFO_CREATION_DATE, when);
}

std::set<char16_t> all_of(const layout::face_metrics& of_face) {
    std::set<char16_t> result;
    for (const auto& g : of_face.glyphs)
        if (g.code <= 0xFFFF) result.insert(static_cast<char16_t>(g.code));
    return result;
}

} // namespace

grammar::diagnostic failure(std::string_view kind, std::string message) {
    return {.kind = kind, .where = {}, .message = std::move(message)};
}

painting::painting(const font_set& fonts, const document_info& info,
                   std::vector<std::set<char16_t>> characters)
    : fonts_(fonts), characters_(std::move(characters)), faces_(fonts.faces.size()),
      made_(new_document(error_)) {
    if (!made_) return;
    HPDF_SetPagesConfiguration(made_.get(), 256); // more than 32,767 pages in one list are refused
    describe(made_.get(), info);
    if (info.date) date(made_.get(), *info.date);
}

/// A face that is drawn takes its figures from another.
void painting::need(layout::face_id face) {
    if (const auto* drawn = std::get_if<lettering>(&fonts_.faces[face])) return need(drawn->face);
    if (faces_[face].font) return;
    faces_[face] = pdf::put_in(
        made_.get(), face,
        characters_.empty() ? all_of(fonts_.metrics.faces[face]) : characters_[face], fonts_);
}

bool painting::embed_faces_of(const layout::page& p) {
    for (const auto& run : p.text)
        if (is_well() && !run.text.empty()) need(run.face);
    return is_well();
}

HPDF_Page painting::drawn(HPDF_Page on, const layout::page& p) {
    if (on) draw(made_.get(), on, p, faces_, fonts_);
    is_whole_ = is_whole_ && on && is_well() && compressor_.compress_page(on);
    return is_whole_ ? on : nullptr;
}

HPDF_Page painting::add(const layout::page& p) {
    if (!is_well() || !embed_faces_of(p)) return nullptr;
    auto* page = HPDF_AddPage(made_.get());
    if (page) pages_.push_back(page);
    return drawn(page, p);
}

HPDF_Page painting::put_in(std::size_t at, const layout::page& p) {
    if (!is_well() || !embed_faces_of(p)) return nullptr;
    auto* page = HPDF_InsertPage(made_.get(), pages_.at(at));
    if (page) pages_.insert(pages_.begin() + static_cast<std::ptrdiff_t>(at), page);
    return drawn(page, p);
}

HPDF_Outline painting::add_bookmark(const std::string& title, HPDF_Outline under) {
    if (!is_well()) return nullptr;
    auto* made = HPDF_CreateOutline(made_.get(), under, "", nullptr);
    if (made) HPDF_Dict_Add(made, "Title", text_string(made_.get(), shortened(title)));
    return made;
}

void painting::point(HPDF_Outline bookmark, HPDF_Page to) {
    if (!is_well() || !bookmark || !to) return;
    auto* place = HPDF_Page_CreateDestination(to);
    if (!place) return;
    HPDF_Destination_SetFit(place);
    HPDF_Outline_SetDestination(bookmark, place);
}

void painting::add_label(std::size_t at, const std::string& label) {
    labels_.push_back({at, shortened(label)});
}

void painting::add_numbers(std::size_t at, HPDF_PageNumStyle style) {
    if (is_well()) HPDF_AddPageLabel(made_.get(), static_cast<HPDF_UINT>(at), style, 1, nullptr);
}

bool painting::compress_fonts() {
    for (std::size_t i = 0; i < faces_.size(); ++i)
        if (faces_[i].font && std::holds_alternative<font_program>(fonts_.faces[i]) &&
            !compressor_.compress_font(faces_[i].font))
            return false;
    return true;
}

painted painting::finish() {
    painted result;
    if (!made_) {
        result.messages.push_back(failure("pdf-failed", "there is no memory for a PDF"));
        return result;
    }
    if (is_whole_ && is_well()) put_labels(made_.get(), labels_);
    if (is_whole_ && is_well() && compress_fonts()) result.bytes = saved(made_.get());
    if (!is_well() || result.bytes.empty()) {
        result.bytes.clear();
        result.messages.push_back(
            failure("pdf-failed", fmt::format("the PDF library stopped with error {:#x}, {}",
                                              error_.code, error_.detail)));
    }
    return result;
}

} // namespace benchcard::pdf
