#include "styles/pdf/fonts.hpp"

#include "styles/pdf/base_fonts.hpp"
#include "styles/pdf/installed_fonts.hpp"
#include "styles/pdf/owned.hpp"

#include <fstream>
#include <hb-subset.h>
#include <hb.h>
#include <memory>

namespace benchcard::pdf {

namespace {

using blob = owned<hb_blob_t, hb_blob_destroy>;
using face = owned<hb_face_t, hb_face_destroy>;
using font = owned<hb_font_t, hb_font_destroy>;
using code_set = owned<hb_set_t, hb_set_destroy>;
using subset_input = owned<hb_subset_input_t, hb_subset_input_destroy>;

/// What a line of type can hold, character after character: scripts that run from right to left
/// or join their letters are left out, for they would come out wrong without a word.
constexpr std::pair<hb_codepoint_t, hb_codepoint_t> settable[] = {
    {0x0020, 0x007E}, {0x00A0, 0x00AC}, {0x00AE, 0x058F}, {0x10A0, 0x10FF},
    {0x1C90, 0x1CBF}, {0x1D00, 0x1FFF}, {0x2000, 0x200A}, {0x2010, 0x2027},
    {0x202F, 0x205F}, {0x2070, 0x2BFF}, {0x2C60, 0x2C7F}, {0x2DE0, 0x2E7F},
    {0xA640, 0xA69F}, {0xA720, 0xA7FF}, {0xFB00, 0xFB06}, {0xFFFD, 0xFFFD},
};

code_set settable_characters(hb_face_t* of) {
    code_set wanted(hb_set_create()), there(hb_set_create());
    for (const auto& [from, to] : settable) hb_set_add_range(wanted.get(), from, to);
    hb_face_collect_unicodes(of, there.get());
    hb_set_intersect(wanted.get(), there.get());
    return wanted;
}

face face_of(const std::string& bytes) {
    const blob data(hb_blob_create(bytes.data(), static_cast<unsigned>(bytes.size()),
                                   HB_MEMORY_MODE_READONLY, nullptr, nullptr));
    return face(hb_face_create(data.get(), 0));
}

/// The PDF library reads outlines from `glyf` only, and of a broken file says nothing at all.
bool has_outlines(hb_face_t* of) {
    const blob table(hb_face_reference_table(of, HB_TAG('g', 'l', 'y', 'f')));
    return hb_blob_get_length(table.get()) > 0;
}

std::string subset_of(hb_face_t* whole, hb_set_t* codes) {
    const subset_input wishes(hb_subset_input_create_or_fail());
    if (!wishes) return {};
    hb_set_union(hb_subset_input_unicode_set(wishes.get()), codes);
    hb_subset_input_set_flags(wishes.get(), HB_SUBSET_FLAGS_NO_HINTING);
    auto* dropped = hb_subset_input_set(wishes.get(), HB_SUBSET_SETS_DROP_TABLE_TAG);
    for (const auto tag : {HB_TAG('G', 'S', 'U', 'B'), HB_TAG('G', 'P', 'O', 'S'),
                           HB_TAG('G', 'D', 'E', 'F'), HB_TAG('k', 'e', 'r', 'n')})
        hb_set_add(dropped, tag);
    const face small(hb_subset_or_fail(whole, wishes.get()));
    if (!small) return {};
    const blob data(hb_face_reference_blob(small.get()));
    unsigned length = 0;
    const char* bytes = hb_blob_get_data(data.get(), &length);
    return {bytes, length};
}

int thousandths(int units, int units_per_em) {
    return static_cast<int>(static_cast<std::int64_t>(units) * 1000 / units_per_em);
}

/// Rounded outwards, so that a box never leaves ink out.
int thousandths_up(int units, int units_per_em) {
    const auto scaled = static_cast<std::int64_t>(units) * 1000;
    const auto down = scaled / units_per_em;
    return static_cast<int>(scaled > down * units_per_em ? down + 1 : down);
}

layout::glyph measure(hb_font_t* in, hb_codepoint_t code, hb_codepoint_t id, int em) {
    layout::glyph g{.code = code};
    g.advance = thousandths(hb_font_get_glyph_h_advance(in, id), em);
    hb_glyph_extents_t ink{};
    if (hb_font_get_glyph_extents(in, id, &ink)) {
        g.left = -thousandths_up(-ink.x_bearing, em);
        g.right = thousandths_up(ink.x_bearing + ink.width, em);
        g.above = thousandths_up(ink.y_bearing, em);
        g.below = thousandths_up(-(ink.y_bearing + ink.height), em);
    }
    return g;
}

layout::face_metrics measures_of(hb_face_t* whole, hb_set_t* codes) {
    const font sized(hb_font_create(whole)); // its scale is the units of the em
    const int em = static_cast<int>(hb_face_get_upem(whole));
    layout::face_metrics metrics;
    hb_codepoint_t code = HB_SET_VALUE_INVALID, id = 0;
    while (hb_set_next(codes, &code))
        if (hb_font_get_nominal_glyph(sized.get(), code, &id) && id != 0)
            metrics.glyphs.push_back(measure(sized.get(), code, id, em));
    return metrics;
}

std::string bytes_of_file(const std::string& path) {
    std::ifstream in(path, std::ios::binary | std::ios::ate);
    std::string bytes(in ? static_cast<std::size_t>(in.tellg()) : 0, '\0');
    in.seekg(0).read(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    if (!in) bytes.clear();
    return bytes;
}

/// Adds a face to the set and to the chains of the weights it serves.
void add_face(font_set& fonts, face_source source, layout::face_metrics metrics,
              std::initializer_list<layout::weight> serves) {
    const auto id = static_cast<layout::face_id>(fonts.faces.size());
    fonts.faces.push_back(std::move(source));
    fonts.metrics.faces.push_back(std::move(metrics));
    for (const auto w : serves) fonts.metrics.chains[static_cast<std::size_t>(w)].push_back(id);
}

grammar::diagnostic unreadable_font(const std::string& file) {
    return {.kind = "unreadable-font",
            .where = {},
            .message = "the font " + file + " is installed, and cannot be read",
            .helps = {{.text = "install the Debian package fonts-noto-core again"}}};
}

/// Adds the font of a file; false when there is none. One that cannot be read is an
/// error: to print without it would change how a card looks for want of memory.
bool add_font(font_set& fonts, const std::string& file,
              std::initializer_list<layout::weight> serves, grammar::diagnostics& messages) {
    if (file.empty()) return false;
    font_program program{bytes_of_file(file)};
    auto measures = measures_of(program);
    if (!measures) {
        messages.push_back(unreadable_font(file));
        return true;
    }
    add_face(fonts, std::move(program), std::move(*measures), serves);
    return true;
}

void add_base_fonts(font_set& fonts) {
    const auto add = [&](const char* name, layout::weight serves) {
        add_face(fonts, base_font{name}, measures_of_base(name), {serves});
    };
    add("Helvetica", layout::weight::regular);
    add("Helvetica-Bold", layout::weight::bold);
}

/// Adds the drawn signs that go with the first face of each weight.
void add_signs(font_set& fonts) {
    const auto add = [&](layout::weight serves, int stroke) {
        const auto letters = fonts.metrics.chains[static_cast<std::size_t>(serves)].front();
        add_face(fonts, lettering{letters, stroke}, measures_of_signs(fonts.metrics.faces[letters]),
                 {serves});
    };
    add(layout::weight::regular, 60);
    add(layout::weight::bold, 100);
}

grammar::diagnostic missing_text_font() {
    return {.kind = "missing-font",
            .level = grammar::severity::warning,
            .where = {},
            .message = "the font Noto Sans is not installed, so these cards are set in Helvetica",
            .notes = {{.text = "the PDF does not carry it, and has Western letters only"}},
            .helps = {{.text = "install the Debian package fonts-noto-core"}}};
}

std::size_t number_at(std::string_view bytes, std::size_t at, std::size_t size) {
    std::size_t value = 0;
    for (std::size_t i = 0; i < size; ++i)
        value = value << 8 | static_cast<unsigned char>(bytes[at + i]);
    return value;
}

/// Whether every table that a font file lists lies within it: of one that was cut off, the PDF
/// library makes blanks without a word. (OpenType 1.9, table directory.)
bool is_whole(std::string_view bytes) {
    constexpr std::size_t header = 12, record = 16;
    if (bytes.size() < header) return false;
    const auto tables = number_at(bytes, 4, 2);
    if (bytes.size() < header + tables * record) return false;
    for (std::size_t i = 0; i < tables; ++i) {
        const auto at = header + i * record;
        if (number_at(bytes, at + 8, 4) + number_at(bytes, at + 12, 4) > bytes.size()) return false;
    }
    return tables > 0;
}

} // namespace

std::string cut_to(const font_program& program, const std::set<char16_t>& characters) {
    const auto whole = face_of(program.bytes);
    const code_set codes(hb_set_create());
    for (const auto code : characters) hb_set_add(codes.get(), code);
    return subset_of(whole.get(), codes.get());
}

std::optional<layout::face_metrics> measures_of(const font_program& program) {
    if (!is_whole(program.bytes)) return std::nullopt;
    const auto whole = face_of(program.bytes);
    if (hb_face_get_glyph_count(whole.get()) == 0 || !has_outlines(whole.get()))
        return std::nullopt;
    return measures_of(whole.get(), settable_characters(whole.get()).get());
}

font_set load_fonts(grammar::diagnostics& messages, reach wanted) {
    using enum layout::weight;
    installed_fonts installed;
    font_set fonts;
    const auto add = [&](font_name name, std::initializer_list<layout::weight> serves) {
        return add_font(fonts, installed.file_of(name), serves, messages);
    };
    const bool has_text = add({"Noto Sans"}, {regular}) && add({"Noto Sans", true}, {bold});
    if (!has_text) {
        messages.push_back(missing_text_font());
        fonts = {};
        add_base_fonts(fonts);
    }
    fonts.is_complete = !has_text || wanted == reach::all;
    if (grammar::has_errors(messages) || !fonts.is_complete) return fonts;
    add({"Noto Sans Symbols2"}, {regular, bold});
    add({"DejaVu Sans"}, {regular, bold});
    add_signs(fonts);
    return fonts;
}

font_set fonts_of_readers() {
    font_set fonts;
    add_base_fonts(fonts);
    add_signs(fonts);
    return fonts;
}

} // namespace benchcard::pdf
