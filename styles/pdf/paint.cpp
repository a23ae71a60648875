#include "styles/pdf/paint.hpp"

#include "styles/layout/utf8.hpp"
#include "styles/pdf/character_name.hpp"
#include "styles/pdf/faces.hpp"
#include "styles/pdf/haru.hpp"

#include <cmath>
#include <ctime>
#include <fmt/format.h>
#include <hpdf_catalog.h>
#include <hpdf_doc.h>
#include <hpdf_objects.h>
#include <hpdf_page_label.h>
#include <hpdf_pages.h>
#include <optional>
#include <set>

namespace benchcard::pdf {

namespace {

using layout::page;
using layout::text_run;

grammar::diagnostic failure(std::string_view kind, std::string message) {
    return {.kind = kind, .where = {}, .message = std::move(message)};
}

bool drawable(double number) { return std::isfinite(number) && std::fabs(number) <= 14400; }

struct drawable_shape {
    bool operator()(const layout::line& l) const {
        return drawable(l.x1) && drawable(l.y1) && drawable(l.x2) && drawable(l.y2) &&
               drawable(l.width);
    }
    bool operator()(const layout::rectangle& r) const {
        return drawable(r.x) && drawable(r.y) && drawable(r.width) && drawable(r.height) &&
               drawable(r.line_width);
    }
    bool operator()(const layout::polygon& p) const {
        for (const auto& corner : p.points)
            if (!drawable(corner.x) || !drawable(corner.y)) return false;
        return drawable(p.line_width);
    }
};

/// The PDF library writes numbers that are none into the file without a word, so this is the
/// one place where every number is looked at.
bool drawable_page(const page& p) {
    if (!drawable(p.width) || !drawable(p.height) || p.width < 3 || p.height < 3) return false;
    const auto& t = p.trim;
    if (t && !(drawable(t->left) && drawable(t->top) && drawable(t->right) && drawable(t->bottom)))
        return false;
    for (const auto& s : p.shapes)
        if (!std::visit(drawable_shape{}, s)) return false;
    for (const auto& run : p.text)
        if (!drawable(run.x) || !drawable(run.y) || !(run.size > 0 && run.size <= 600))
            return false;
    return true;
}

float number(double value) { return static_cast<float>(value); }

bool is_grey(styles::colour c) { return c.red == c.green && c.green == c.blue; }
float share(std::uint8_t part) { return static_cast<float>(part) / 255; }

void set_fill(HPDF_Page on, styles::colour c) {
    if (is_grey(c))
        HPDF_Page_SetGrayFill(on, share(c.red));
    else
        HPDF_Page_SetRGBFill(on, share(c.red), share(c.green), share(c.blue));
}

void set_stroke(HPDF_Page on, styles::colour c) {
    if (is_grey(c))
        HPDF_Page_SetGrayStroke(on, share(c.red));
    else
        HPDF_Page_SetRGBStroke(on, share(c.red), share(c.green), share(c.blue));
}

/// Draws shapes on one page; y is turned round, for a PDF counts from the foot.
struct shape_painter {
    HPDF_Page on;
    double height;

    void operator()(const layout::line& l) const {
        begin(l.width, l.ink);
        HPDF_Page_MoveTo(on, number(l.x1), number(height - l.y1));
        HPDF_Page_LineTo(on, number(l.x2), number(height - l.y2));
        HPDF_Page_Stroke(on);
    }
    void operator()(const layout::rectangle& r) const {
        begin(r.line_width, r.ink);
        HPDF_Page_Rectangle(on, number(r.x), number(height - r.y - r.height), number(r.width),
                            number(r.height));
        finish(r.line_width);
    }
    void operator()(const layout::polygon& p) const {
        if (p.points.size() < 2) return;
        begin(p.line_width, p.ink);
        HPDF_Page_MoveTo(on, number(p.points[0].x), number(height - p.points[0].y));
        for (std::size_t i = 1; i < p.points.size(); ++i)
            HPDF_Page_LineTo(on, number(p.points[i].x), number(height - p.points[i].y));
        HPDF_Page_ClosePath(on);
        finish(p.line_width);
    }

  private:
    /// Before a path is begun: within one the library refuses to change these.
    void begin(double line_width, styles::colour ink) const {
        if (line_width > 0) HPDF_Page_SetLineWidth(on, number(line_width));
        line_width > 0 ? set_stroke(on, ink) : set_fill(on, ink);
    }
    void finish(double line_width) const {
        line_width > 0 ? HPDF_Page_Stroke(on) : HPDF_Page_Fill(on);
    }
};

void draw_run(HPDF_Page on, double height, const text_run& run, const face_in_use& face,
              const layout::face_metrics& metrics) {
    // A text may not be longer than 65,535 bytes, and a character is two.
    constexpr std::size_t most_characters = 30'000;
    const auto characters = layout::characters_of(run.text);
    HPDF_Page_SetFontAndSize(on, face.font, number(run.size));
    set_fill(on, run.ink);
    double x = run.x;
    for (std::size_t from = 0; from < characters.size(); from += most_characters) {
        const auto part = std::u32string_view(characters).substr(from, most_characters);
        HPDF_Page_TextOut(on, number(x), number(height - run.y), face.encoded(part).c_str());
        std::int64_t advance = 0;
        for (const auto code : part) advance += metrics.find(code)->advance;
        x += static_cast<double>(advance) * run.size / 1000;
    }
}

/// A sign that is drawn is marked as the character it stands for, so that it can be found and
/// copied (ISO 32000-1, 14.9.4).
void mark(HPDF_Page on, char32_t code) {
    auto* content = static_cast<HPDF_PageAttr>(on->attr)->stream;
    const auto marking =
        fmt::format("/Span <</ActualText <FEFF{:04X}>>> BDC\n", static_cast<unsigned>(code));
    HPDF_Stream_WriteStr(content, marking.c_str());
}

void end_mark(HPDF_Page on) {
    HPDF_Stream_WriteStr(static_cast<HPDF_PageAttr>(on->attr)->stream, "EMC\n");
}

/// The signs of a run in a face that is drawn, one after the other.
void draw_signs(HPDF_Page on, double height, const text_run& run, const faces_in_use& faces,
                const font_set& fonts) {
    const auto& beside = std::get<lettering>(fonts.faces[run.face]);
    const auto& letters = fonts.metrics.faces[beside.face];
    double x = run.x;
    for (const auto code : layout::characters_of(run.text)) {
        const auto sign = drawn_sign(code, run, x, beside, letters);
        mark(on, code);
        for (const auto& s : sign.shapes) std::visit(shape_painter{on, height}, s);
        HPDF_Page_BeginText(on);
        for (const auto& figures : sign.text)
            draw_run(on, height, figures, faces[beside.face], letters);
        HPDF_Page_EndText(on);
        end_mark(on);
        x += fonts.metrics.faces[run.face].find(code)->advance * run.size / 1000;
    }
}

bool is_drawn(const text_run& run, const font_set& fonts) {
    return std::holds_alternative<lettering>(fonts.faces[run.face]);
}

/// A box of a page; counted from its foot, as a PDF does.
void add_box(HPDF_Doc document, HPDF_Page to, const char* name, const layout::box& b,
             double height) {
    const HPDF_Box turned{number(b.left), number(height - b.bottom), number(b.right),
                          number(height - b.top)};
    HPDF_Dict_Add(to, name, HPDF_Box_Array_New(document->mmgr, turned));
}

HPDF_Page draw_page(HPDF_Doc document, const page& p, const faces_in_use& faces,
                    const font_set& fonts) {
    auto* drawn = HPDF_AddPage(document);
    if (!drawn) return nullptr;
    HPDF_Page_SetWidth(drawn, number(p.width));
    HPDF_Page_SetHeight(drawn, number(p.height));
    const layout::box whole{0, 0, p.width, p.height};
    add_box(document, drawn, "CropBox", whole, p.height);
    add_box(document, drawn, "TrimBox", p.trim.value_or(whole), p.height);
    for (const auto& s : p.shapes) std::visit(shape_painter{drawn, p.height}, s);
    if (p.text.empty()) return drawn;
    HPDF_Page_BeginText(drawn);
    for (const auto& run : p.text)
        if (!run.text.empty() && !is_drawn(run, fonts))
            draw_run(drawn, p.height, run, faces[run.face], fonts.metrics.faces[run.face]);
    HPDF_Page_EndText(drawn);
    for (const auto& run : p.text)
        if (is_drawn(run, fonts)) draw_signs(drawn, p.height, run, faces, fonts);
    return drawn;
}

/// At most so many characters of a text: titles in a PDF are for finding, not for reading.
std::string shortened(const std::string& text) {
    constexpr std::size_t most = 250;
    std::string out;
    for (const auto code : layout::characters_of(text).substr(0, most)) layout::append(out, code);
    return out;
}

/// A label of our own, such as `2a`: all prefix, and no number behind it.
void add_label(HPDF_Doc document, std::size_t at, const std::string& label) {
    auto* made =
        HPDF_PageLabel_New(document, HPDF_PAGE_NUM_STYLE_DECIMAL, 1, shortened(label).c_str());
    if (!made) return;
    HPDF_Dict_RemoveElement(made, "S");
    HPDF_Dict_RemoveElement(made, "St");
    HPDF_Catalog_AddPageLabel(document->catalog, static_cast<HPDF_UINT>(at), made);
}

void add_bookmark(HPDF_Doc document, HPDF_Page to, const std::string& title) {
    auto* encoder = HPDF_GetEncoder(document, "UTF-8");
    auto* entry = HPDF_CreateOutline(document, nullptr, shortened(title).c_str(), encoder);
    auto* place = HPDF_Page_CreateDestination(to);
    if (!entry || !place) return;
    HPDF_Destination_SetFit(place);
    HPDF_Outline_SetDestination(entry, place);
}

void describe(HPDF_Doc document, const document_info& info) {
    HPDF_SetInfoAttr(document, HPDF_INFO_TITLE, shortened(info.title).c_str());
    HPDF_SetInfoAttr(document, HPDF_INFO_PRODUCER, shortened(info.producer).c_str());
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

/// The finished file; to memory only, since the library takes a full disk for a success.
std::string saved(HPDF_Doc document) {
    if (HPDF_SaveToStream(document) != HPDF_OK) return {};
    std::string bytes(HPDF_GetStreamSize(document), '\0');
    auto size = static_cast<HPDF_UINT32>(bytes.size());
    HPDF_ReadFromStream(document, reinterpret_cast<HPDF_BYTE*>(bytes.data()), &size);
    bytes.resize(size);
    return bytes;
}

} // namespace

painted paint(const std::vector<page>& pages, const font_set& fonts, const document_info& info) {
    painted result;
    if (pages.empty()) result.messages.push_back(failure("nothing-to-print", "there is no card"));
    for (const auto& p : pages)
        if (!drawable_page(p)) {
            result.messages.push_back(
                failure("pdf-failed", fmt::format("card {} has a place that is no number",
                                                  p.label.empty() ? "1" : p.label)));
            return result;
        }
    const auto used = characters_of(pages, fonts);
    for (const auto& [code, text] : used.missing) {
        result.missing.push_back(code);
        result.messages.push_back(
            failure("missing-character", fmt::format("no font has the character {}, in “{}”",
                                                     named_character(code), text.substr(0, 200))));
    }
    if (grammar::has_errors(result.messages)) return result;

    first_error error;
    const auto made = new_document(error);
    if (!made) {
        result.messages.push_back(failure("pdf-failed", "there is no memory for a PDF"));
        return result;
    }
    HPDF_SetPagesConfiguration(made.get(), 256); // more than 32,767 pages in one list are refused
    describe(made.get(), info);
    if (info.date) date(made.get(), *info.date);
    const auto faces = put_in(made.get(), used, fonts);
    for (std::size_t i = 0; i < pages.size() && error.code == 0; ++i) {
        auto* drawn = draw_page(made.get(), pages[i], faces, fonts);
        if (!drawn) break;
        if (!pages[i].label.empty()) add_label(made.get(), i, pages[i].label);
        for (const auto& title : pages[i].bookmarks) add_bookmark(made.get(), drawn, title);
    }
    if (error.code == 0) result.bytes = saved(made.get());
    if (error.code != 0 || result.bytes.empty()) {
        result.bytes.clear();
        result.messages.push_back(
            failure("pdf-failed", fmt::format("the PDF library stopped with error {:#x}, {}",
                                              error.code, error.detail)));
    }
    return result;
}

} // namespace benchcard::pdf
