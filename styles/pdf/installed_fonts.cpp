#include "styles/pdf/installed_fonts.hpp"

#include "styles/pdf/owned.hpp"

#include <cstdlib>
#include <cstring>
#include <fontconfig/fontconfig.h>
#include <new>
#include <unistd.h>

namespace benchcard::pdf {

namespace {

using pattern = owned<FcPattern, FcPatternDestroy>;
using object_set = owned<FcObjectSet, FcObjectSetDestroy>;
using listed_fonts = owned<FcFontSet, FcFontSetDestroy>;

/// Where Debian's packages put their fonts.
struct place {
    font_name font;
    const char* file = nullptr;
};
constexpr place places[] = {
    {{"Noto Sans"}, "/usr/share/fonts/truetype/noto/NotoSans-Regular.ttf"},
    {{"Noto Sans", true}, "/usr/share/fonts/truetype/noto/NotoSans-Bold.ttf"},
    {{"Noto Sans Symbols2"}, "/usr/share/fonts/truetype/noto/NotoSansSymbols2-Regular.ttf"},
    {{"DejaVu Sans"}, "/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf"},
};

bool is_configured_here() {
    for (const auto* name : {"FONTCONFIG_FILE", "FONTCONFIG_PATH", "FONTCONFIG_SYSROOT"})
        if (std::getenv(name)) return true;
    return false;
}

std::string in_its_place(font_name wanted) {
    if (is_configured_here()) return {};
    for (const auto& p : places)
        if (p.font.bold == wanted.bold && std::strcmp(p.font.family, wanted.family) == 0 &&
            access(p.file, F_OK) == 0)
            return p.file;
    return {};
}

/// Matching would quietly give another font, so this lists, and takes the first by name of those
/// that are exactly what was asked for.
std::string first_listed(FcConfig* installed, font_name wanted) {
    const pattern like(FcPatternCreate());
    FcPatternAddString(like.get(), FC_FAMILY, reinterpret_cast<const FcChar8*>(wanted.family));
    FcPatternAddString(like.get(), FC_FONTFORMAT, reinterpret_cast<const FcChar8*>("TrueType"));
    FcPatternAddInteger(like.get(), FC_SLANT, FC_SLANT_ROMAN);
    FcPatternAddInteger(like.get(), FC_WEIGHT, wanted.bold ? FC_WEIGHT_BOLD : FC_WEIGHT_REGULAR);
    FcPatternAddBool(like.get(), FC_VARIABLE, FcFalse);
    const object_set asked(FcObjectSetBuild(FC_FILE, static_cast<const char*>(nullptr)));
    const listed_fonts found(FcFontList(installed, like.get(), asked.get()));
    std::string first;
    for (int i = 0; found && i < found->nfont; ++i) {
        FcChar8* path = nullptr;
        if (FcPatternGetString(found->fonts[i], FC_FILE, 0, &path) != FcResultMatch) continue;
        const std::string name = reinterpret_cast<const char*>(path);
        if (first.empty() || name < first) first = name;
    }
    return first;
}

} // namespace

struct installed_fonts::configuration {
    owned<FcConfig, FcConfigDestroy> read{FcInitLoadConfigAndFonts()};
};

installed_fonts::installed_fonts() = default;
installed_fonts::~installed_fonts() = default;

std::string installed_fonts::file_of(font_name wanted) {
    if (auto file = in_its_place(wanted); !file.empty()) return file;
    if (!configuration_) configuration_ = std::make_unique<configuration>();
    if (!configuration_->read) throw std::bad_alloc();
    return first_listed(configuration_->read.get(), wanted);
}

} // namespace benchcard::pdf
