#include "styles/pdf/draw.hpp"

#include "styles/layout/utf8.hpp"

#include <cmath>
#include <fmt/format.h>
#include <hpdf_doc.h>
#include <hpdf_objects.h>
#include <hpdf_pages.h>

namespace benchcard::pdf {

namespace {

using layout::text_run;

/// Measures are written to a hundredth of a point: no printer shows more, and more figures make
/// larger files.
double hundredths(double value) { return std::round(value * 100); }
float number(double value) { return static_cast<float>(hundredths(value) / 100); }

bool is_grey(styles::colour c) { return c.red == c.green && c.green == c.blue; }
float share(std::uint8_t part) { return static_cast<float>(part) / 255; }

/// What a page is drawn with, which stays until it is changed; at first as a PDF has it
/// (ISO 32000-1, 8.4.1).
class pen {
  public:
    explicit pen(HPDF_Page on) : on_(on) {}

    void set_line_width(double width) {
        if (line_width_ != width) HPDF_Page_SetLineWidth(on_, number(width));
        line_width_ = width;
    }
    void set_stroke(styles::colour c) {
        if (stroke_ == c) return;
        stroke_ = c;
        if (is_grey(c))
            HPDF_Page_SetGrayStroke(on_, share(c.red));
        else
            HPDF_Page_SetRGBStroke(on_, share(c.red), share(c.green), share(c.blue));
    }
    void set_fill(styles::colour c) {
        if (fill_ == c) return;
        fill_ = c;
        if (is_grey(c))
            HPDF_Page_SetGrayFill(on_, share(c.red));
        else
            HPDF_Page_SetRGBFill(on_, share(c.red), share(c.green), share(c.blue));
    }
    void set_font(HPDF_Font font, double size) {
        if (font_ == font && size_ == size) return;
        font_ = font;
        size_ = size;
        HPDF_Page_SetFontAndSize(on_, font, number(size));
    }

    void begin_text() {
        HPDF_Page_BeginText(on_);
        x_ = y_ = 0;
    }
    /// Where a text begins: where the last one ended, or written as a way from where that began. It
    /// is reckoned in whole hundredths, so that what is rounded does not add up.
    void move_to(double x, double y) {
        constexpr double as_good_as_there = 0.05; // points
        const auto at = HPDF_Page_GetCurrentTextPos(on_);
        if (std::abs(at.x - x) < as_good_as_there && std::abs(at.y - y) < as_good_as_there) return;
        const double to_x = hundredths(x), to_y = hundredths(y);
        HPDF_Page_MoveTextPos(on_, number((to_x - x_) / 100), number((to_y - y_) / 100));
        x_ = to_x;
        y_ = to_y;
    }

  private:
    HPDF_Page on_;
    double line_width_ = 1;
    styles::colour stroke_ = styles::black, fill_ = styles::black;
    HPDF_Font font_ = nullptr;
    double size_ = 0;
    double x_ = 0, y_ = 0; ///< of the last text, in hundredths of a point
};

/// Draws shapes on one page; y is turned round, for a PDF counts from the foot.
struct shape_painter {
    HPDF_Page on;
    double height;
    pen& held;

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
        if (line_width > 0) held.set_line_width(line_width);
        line_width > 0 ? held.set_stroke(ink) : held.set_fill(ink);
    }
    void finish(double line_width) const {
        line_width > 0 ? HPDF_Page_Stroke(on) : HPDF_Page_Fill(on);
    }
};

/// As much of a text as can be shown in one go: no more than 65,535 bytes, and a character is two.
std::string_view first_of(std::string_view text) {
    constexpr std::size_t most = 30'000;
    if (text.size() <= most) return text;
    auto end = most;
    while (end > most - 3 && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80) --end;
    return text.substr(0, end); // not within a character
}

/// In thousandths of the type size.
double advance_of(std::string_view text, const layout::face_metrics& metrics) {
    std::int64_t advance = 0;
    layout::for_each_character(text,
                               [&](char32_t code) { advance += metrics.find(code)->advance; });
    return static_cast<double>(advance);
}

void draw_run(HPDF_Page on, double height, const text_run& run, const face_in_use& face,
              const layout::face_metrics& metrics, pen& held) {
    held.set_font(face.font, run.size);
    held.set_fill(run.ink);
    double x = run.x;
    for (std::string_view rest = run.text; !rest.empty();) {
        const auto part = first_of(rest);
        rest.remove_prefix(part.size());
        held.move_to(x, height - run.y);
        HPDF_Page_ShowText(on, face.encoded(part).c_str());
        if (!rest.empty()) x += advance_of(part, metrics) * run.size / 1000;
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
                const font_set& fonts, pen& held) {
    const auto& beside = std::get<lettering>(fonts.faces[run.face]);
    const auto& letters = fonts.metrics.faces[beside.face];
    double x = run.x;
    for (const auto code : layout::characters_of(run.text)) {
        const auto sign = drawn_sign(code, run, x, beside, letters);
        mark(on, code);
        for (const auto& s : sign.shapes) std::visit(shape_painter{on, height, held}, s);
        held.begin_text();
        for (const auto& figures : sign.text)
            draw_run(on, height, figures, faces[beside.face], letters, held);
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

/// The library names the sets of procedures of each page; no reader asks for them any more
/// (ISO 32000-1, 14.2).
void drop_procedure_sets(HPDF_Page of) {
    auto* resources =
        static_cast<HPDF_Dict>(HPDF_Page_GetInheritableItem(of, "Resources", HPDF_OCLASS_DICT));
    if (resources) HPDF_Dict_RemoveElement(resources, "ProcSet");
}

} // namespace

void draw(HPDF_Doc document, HPDF_Page on, const layout::page& p, const faces_in_use& faces,
          const font_set& fonts) {
    HPDF_Page_SetWidth(on, number(p.width));
    HPDF_Page_SetHeight(on, number(p.height));
    drop_procedure_sets(on);
    // Where it is not given, it is the whole page (ISO 32000-1, 14.11.2).
    if (p.trim) add_box(document, on, "TrimBox", *p.trim, p.height);
    pen held(on);
    for (const auto& s : p.shapes) std::visit(shape_painter{on, p.height, held}, s);
    if (p.text.empty()) return;
    held.begin_text();
    for (const auto& run : p.text)
        if (!run.text.empty() && !is_drawn(run, fonts))
            draw_run(on, p.height, run, faces[run.face], fonts.metrics.faces[run.face], held);
    HPDF_Page_EndText(on);
    for (const auto& run : p.text)
        if (is_drawn(run, fonts)) draw_signs(on, p.height, run, faces, fonts, held);
}

} // namespace benchcard::pdf
