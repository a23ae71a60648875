#include "styles/pdf/codes.hpp"

#include "styles/layout/utf8.hpp"

#include <algorithm>
#include <cstring>
#include <fmt/format.h>
#include <hpdf_consts.h>
#include <hpdf_doc.h>
#include <hpdf_encoder.h>
#include <hpdf_fontdef.h>
#include <hpdf_objects.h>
#include <hpdf_streams.h>
#include <iterator>
#include <vector>

namespace benchcard::pdf {

namespace {

// The library takes text up to its first zero byte and treats raw blanks and line ends as such,
// whatever the encoding: no code has one of those bytes in it.
constexpr unsigned first_low = 0x21, low_count = 0x100 - first_low;

constexpr bool avoided(unsigned byte) {
    return byte == 0x00 || byte == 0x09 || byte == 0x0A || byte == 0x0C || byte == 0x0D ||
           byte == 0x20;
}

/// A code that no character gets: the last in each font is lost by the library.
constexpr unsigned spare_code = 0xFFFF;

/// The library's own looks for where a code may begin, each time anew.
HPDF_ByteType every_other(HPDF_Encoder, HPDF_ParseText_Rec* at) {
    const bool begins = at->byte_type != HPDF_BYTE_TYPE_LEAD;
    ++at->index;
    return at->byte_type = begins ? HPDF_BYTE_TYPE_LEAD : HPDF_BYTE_TYPE_TRIAL;
}

HPDF_BOOL any_byte(HPDF_Encoder, HPDF_BYTE) { return HPDF_TRUE; }

HPDF_STATUS set_up(HPDF_Encoder encoder) {
    if (const auto status = HPDF_CMapEncoder_InitAttr(encoder); status != HPDF_OK) return status;
    auto* attributes = static_cast<HPDF_CMapEncoderAttr>(encoder->attr);
    attributes->is_lead_byte_fn = any_byte;
    attributes->is_trial_byte_fn = any_byte;
    attributes->writing_mode = HPDF_WMODE_HORIZONTAL;
    std::strcpy(attributes->registry, "Adobe");
    std::strcpy(attributes->ordering, "Identity-H"); // also the name of the font's encoding
    encoder->type = HPDF_ENCODER_TYPE_DOUBLE_BYTE;
    encoder->byte_type_fn = every_other;
    return HPDF_OK;
}

void set_code(HPDF_CMapEncoderAttr attributes, unsigned code, char16_t character,
              std::uint16_t cid) {
    attributes->cid_map[code & 0xFF][code >> 8] = cid; // the low byte is the first index
    attributes->unicode_map[code & 0xFF][code >> 8] = character;
}

bool register_encoder(HPDF_Doc document, const character_codes& codes, const char* name) {
    std::string writable(name);
    auto* encoder = HPDF_CMapEncoder_New(document->mmgr, writable.data(), set_up);
    if (!encoder || HPDF_Doc_RegisterEncoder(document, encoder) != HPDF_OK) return false;
    if (!HPDF_GetEncoder(document, name)) return false; // this runs set_up
    auto* attributes = static_cast<HPDF_CMapEncoderAttr>(encoder->attr);
    std::uint16_t last = 0;
    for (const auto& [character, code] : codes.all()) {
        set_code(attributes, code, character, code);
        last = std::max(last, code);
    }
    set_code(attributes, spare_code, 0, static_cast<std::uint16_t>(last + 1));
    return true;
}

HPDF_FontDef font_definition(HPDF_Doc document, std::string_view program, const char* tag) {
    const auto size = static_cast<HPDF_UINT>(program.size());
    // One block: it is read in leaps. The library looks at the outline even of a blank, and of a
    // blank that is the font's last character that is behind the end: so there is a little more.
    constexpr HPDF_BYTE behind[16] = {};
    auto* stream = HPDF_MemStream_New(document->mmgr, size + sizeof behind);
    if (!stream) return nullptr;
    HPDF_Stream_Write(stream, reinterpret_cast<const HPDF_BYTE*>(program.data()), size);
    HPDF_Stream_Write(stream, behind, sizeof behind);
    auto* definition = HPDF_TTFontDef_Load(document->mmgr, stream, HPDF_TRUE); // owns the stream
    if (!definition) return nullptr;
    std::string writable(tag);
    HPDF_TTFontDef_SetTagName(definition, writable.data());
    return HPDF_Doc_RegisterFontDef(document, definition) == HPDF_OK ? definition : nullptr;
}

/// The library writes a map from character numbers where readers want one from codes.
bool replace_to_unicode(HPDF_Font font, const std::string& map) {
    auto* item = HPDF_Dict_GetItem(font, "ToUnicode", HPDF_OCLASS_DICT);
    auto* old = static_cast<HPDF_Dict>(item);
    if (!old) return false;
    HPDF_MemStream_FreeData(old->stream);
    for (const auto* key : {"Type", "CMapName", "CIDSystemInfo", "WMode"})
        HPDF_Dict_RemoveElement(old, key);
    return HPDF_Stream_WriteStr(old->stream, map.c_str()) == HPDF_OK;
}

bool name_identity_ordering(HPDF_Doc document, HPDF_Font font) {
    auto* descendants =
        static_cast<HPDF_Array>(HPDF_Dict_GetItem(font, "DescendantFonts", HPDF_OCLASS_ARRAY));
    if (!descendants) return false;
    auto* descendant = static_cast<HPDF_Dict>(HPDF_Array_GetItem(descendants, 0, HPDF_OCLASS_DICT));
    if (!descendant) return false;
    auto* system =
        static_cast<HPDF_Dict>(HPDF_Dict_GetItem(descendant, "CIDSystemInfo", HPDF_OCLASS_DICT));
    if (!system) return false;
    auto* ordering = HPDF_String_New(document->mmgr, "Identity", nullptr);
    return HPDF_Dict_Add(system, "Ordering", ordering) == HPDF_OK;
}

} // namespace

character_codes::character_codes(const std::set<char16_t>& characters) {
    unsigned high = 1, low = first_low;
    for (const auto character : characters) {
        const auto code = static_cast<std::uint16_t>(high << 8 | low);
        codes_.emplace(character, code);
        if (character < of_latin_.size()) of_latin_[character] = code;
        if (++low < first_low + low_count) continue;
        low = first_low;
        do ++high;
        while (avoided(high));
    }
}

std::uint16_t character_codes::code_of(char32_t character) const {
    if (character < of_latin_.size()) return of_latin_[character];
    if (character > 0xFFFF) return 0;
    const auto at = codes_.find(static_cast<char16_t>(character));
    return at == codes_.end() ? std::uint16_t{0} : at->second;
}

std::string character_codes::encoded(std::string_view text) const {
    std::string bytes;
    bytes.reserve(text.size() * 2);
    layout::for_each_character(text, [&](char32_t character) {
        const auto code = code_of(character);
        if (code == 0) return;
        bytes += static_cast<char>(code >> 8);
        bytes += static_cast<char>(code & 0xFF);
    });
    return bytes;
}

std::string character_codes::to_unicode() const {
    constexpr std::size_t most_in_block = 100; // by the definition of character maps
    std::string map = "/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n"
                      "/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def\n"
                      "/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n"
                      "1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n";
    const std::vector<std::pair<char16_t, std::uint16_t>> pairs(codes_.begin(), codes_.end());
    for (std::size_t from = 0; from < pairs.size(); from += most_in_block) {
        const auto count = std::min(most_in_block, pairs.size() - from);
        fmt::format_to(std::back_inserter(map), "{} beginbfchar\n", count);
        for (std::size_t i = from; i < from + count; ++i)
            fmt::format_to(std::back_inserter(map), "<{:04X}> <{:04X}>\n", pairs[i].second,
                           static_cast<unsigned>(pairs[i].first));
        map += "endbfchar\n";
    }
    return map + "endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n";
}

HPDF_Font embed(HPDF_Doc document, std::string_view program, const character_codes& codes,
                const char* tag) {
    if (!register_encoder(document, codes, tag)) return nullptr;
    auto* definition = font_definition(document, program, tag);
    if (!definition) return nullptr;
    auto* font = HPDF_GetFont(document, definition->base_font, tag);
    if (!font || !replace_to_unicode(font, codes.to_unicode())) return nullptr;
    return name_identity_ordering(document, font) ? font : nullptr;
}

} // namespace benchcard::pdf
