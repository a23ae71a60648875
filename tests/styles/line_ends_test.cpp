#include "styles/layout/line_ends.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <linebreak.h>
#include <rapidcheck.h>

using namespace benchcard;

namespace {

/// Words of letters, figures and some signs, with single blanks between them and none at the ends.
rc::Gen<std::u32string> texts(const std::u32string& signs) {
    const auto word =
        rc::gen::nonEmpty(rc::gen::container<std::u32string>(rc::gen::elementOf(signs)));
    return rc::gen::map(rc::gen::nonEmpty(rc::gen::container<std::vector<std::u32string>>(word)),
                        [](const std::vector<std::u32string>& words) {
                            std::u32string text;
                            for (const auto& w : words) text += (text.empty() ? U"" : U" ") + w;
                            return text;
                        });
}

/// Where the library that follows Unicode's UAX 14 lets a line end.
std::vector<bool> ends_by_unicode(const std::u32string& text, const char* language) {
    init_linebreak();
    const std::vector<utf32_t> codes(text.begin(), text.end());
    std::vector<char> breaks(text.size());
    set_linebreaks_utf32(codes.data(), codes.size(), language, breaks.data());
    std::vector<bool> ends;
    for (const auto b : breaks) ends.push_back(b == LINEBREAK_ALLOWBREAK);
    return ends;
}

std::vector<bool> ends_of(const std::u32string& text, const char* language) {
    std::vector<bool> ends;
    for (const auto end : layout::line_ends(text, language))
        ends.push_back(end != layout::line_end::no);
    return ends;
}

} // namespace

TEST_CASE("lines end where UAX 14 lets them", "[text]") {
    CHECK(rc::check("letters, figures, and stops within a sentence and at its end", [] {
        const auto text = *texts(U"abzAZàÖÿ019,.:;");
        RC_ASSERT(ends_of(text, "en") == ends_by_unicode(text, "en"));
    }));
    CHECK(rc::check("with fractions, degrees and parts of a hundred", [] {
        const auto text = *texts(U"aé9,½¼¾⅓⅔⅛⅜⅝⅞×÷·°%");
        const auto* language = *rc::gen::element("en", "de", "el", "ja", "zh-Hant", "ko");
        RC_ASSERT(ends_of(text, language) == ends_by_unicode(text, language));
    }));
    for (const char32_t sign : std::u32string(U"!?-()/%×½°·–'+\u00AD")) {
        const auto signs = U"aé9," + std::u32string(1, sign);
        CHECK(rc::check("one other sign among them", [&] {
            const auto text = *texts(signs);
            RC_ASSERT(ends_of(text, "en") == ends_by_unicode(text, "en"));
        }));
    }
}
