#pragma once

#include <memory>
#include <string>

namespace benchcard::pdf {

/// A font as it is asked for by name.
struct font_name {
    const char* family;
    bool bold = false;
};

/// The fonts of this machine, found through fontconfig. Reading its configuration takes longer than
/// printing a card, so those that Debian's packages bring are looked for in their places first,
/// unless the environment names a configuration of its own.
class installed_fonts {
  public:
    installed_fonts();
    ~installed_fonts();

    /// The TrueType file of a font, or an empty text. Throws std::bad_alloc where there is no
    /// memory for the configuration.
    std::string file_of(font_name wanted);

  private:
    struct configuration;
    std::unique_ptr<configuration> configuration_; ///< nothing before it is asked
};

} // namespace benchcard::pdf
