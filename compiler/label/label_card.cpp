#include "compiler/label/label_card.hpp"

#include "compiler/cards/fingerprint.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace benchcard::label {

namespace {

using safety::law;
using styles::paragraph;

constexpr double small_surface = 80; // cm²

bool is_small(const styles::paper& label) {
    return label.width * label.height / 100 < small_surface;
}

/// Where a text's character of that number begins, in bytes.
std::size_t byte_of(std::string_view text, std::size_t character) {
    std::size_t at = 0;
    for (; at < text.size(); ++at) {
        const bool begins = (static_cast<unsigned char>(text[at]) & 0xC0) != 0x80;
        if (begins && character-- == 0) return at;
    }
    return at;
}

void add(paragraph& to, std::string text, bool strong) {
    if (!text.empty()) to.push_back({std::move(text), strong});
}

paragraph paragraph_of(const marked_text& t) {
    paragraph result;
    std::size_t at = 0;
    for (const auto& a : t.allergens) {
        const auto begin = byte_of(t.text, a.begin), end = byte_of(t.text, a.end);
        add(result, t.text.substr(at, begin - at), false);
        add(result, t.text.substr(begin, end - begin), true);
        at = end;
    }
    add(result, t.text.substr(at), false);
    return result;
}

/// What is said of allergens besides the list: the US statement, what may be in it, and packets.
paragraph strip_of(const draft& d, law form) {
    paragraph result;
    if (form == law::us) result = paragraph_of(contains_statement(d.list));
    const auto add_list = [&](const char* words, const std::vector<std::string>& names,
                              bool strong) {
        if (names.empty()) return;
        add(result, std::string(result.empty() ? "" : " ") + words, false);
        add(result, fmt::format("{}", fmt::join(names, ", ")), strong);
        add(result, ".", false);
    };
    add_list("May contain: ", d.list.allergens.may_contain, true);
    add_list("Check the packet of: ", d.list.allergens.check_packet, false);
    return result;
}

styles::card card_of(const draft& d, law form, const std::string& revision,
                     const styles::paper& label) {
    styles::card result;
    result.title = d.list.title;
    result.batch = "DRAFT";
    result.recipe = heading_of(form);
    if (form == law::eu) result.yield = said_totals(d.list); // beside the name: Art. 22, Annex VIII
    result.notes = {paragraph_of(ingredients_in(d.list, form))};
    result.allergens = strip_of(d, form);
    if (d.date && d.date->day)
        result.keeping = {{"Use by ", false}, {said(*d.date->day), true}};
    else
        result.made_label = "Use by";
    result.cautions = {{{std::string(draft_caution()), false}}};
    if (is_small(label) && form == law::eu)
        result.cautions.push_back({{"Small type: only for a pack whose largest surface is under 80 "
                                    "cm² (Art. 13(3)).",
                                    false}});
    result.revision = revision.empty() ? "" : "rev " + revision;
    result.language = "en";
    return result;
}

} // namespace

double least_x_height(const styles::paper& label) { return is_small(label) ? 0.9 : 1.2; }

std::vector<styles::card> cards_of(const draft& d, const std::string& revision,
                                   const styles::paper& label) {
    std::vector<styles::card> result;
    for (const auto form : forms_of(d.whose)) result.push_back(card_of(d, form, revision, label));
    for (std::size_t i = 0; i < result.size(); ++i) {
        result[i].number = fmt::format("label {} of {}", i + 1, result.size());
        result[i].fingerprint = cards::fingerprint_of(result[i]);
    }
    return result;
}

} // namespace benchcard::label
