#pragma once

#include "styles/pdf/haru.hpp"

#include <array>
#include <cstdint>
#include <map>
#include <set>
#include <string>
#include <string_view>

namespace benchcard::pdf {

/// Two-byte codes for the characters that a document takes from one font. The library's own
/// code for Unicode text carries tables for 65,536 characters a font and a character map that
/// readers complain of; these are as many as there are characters.
class character_codes {
  public:
    explicit character_codes(const std::set<char16_t>& characters);

    /// The codes of a text, two bytes a character; characters not given at first are left out.
    std::string encoded(std::string_view text) const;

    /// The character map by which a reader finds and copies the text.
    std::string to_unicode() const;

    const std::map<char16_t, std::uint16_t>& all() const { return codes_; }

  private:
    std::map<char16_t, std::uint16_t> codes_;
    std::array<std::uint16_t, 0x180> of_latin_{}; ///< the same of the commonest; 0 for none

    std::uint16_t code_of(char32_t character) const;
};

/// Puts a font program into a document and gives it back as a font that is set with `codes`.
/// Null after an error, which the document has reported; `tag` is six capital letters.
HPDF_Font embed(HPDF_Doc document, std::string_view program, const character_codes& codes,
                const char* tag);

} // namespace benchcard::pdf
