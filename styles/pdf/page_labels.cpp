#include "styles/pdf/page_labels.hpp"

#include <algorithm>
#include <hpdf_doc.h>
#include <hpdf_objects.h>
#include <hpdf_page_label.h>
#include <span>

namespace benchcard::pdf {

namespace {

/// In one node of the tree. An array of the library has at most 32,767 things, two a label.
constexpr std::size_t most_in_node = 10'000;

/// A label of our own is all prefix, with no number behind it.
HPDF_Dict label_of(HPDF_Doc document, const page_label& label) {
    auto* made = HPDF_PageLabel_New(document, HPDF_PAGE_NUM_STYLE_DECIMAL, 1, label.text.c_str());
    if (!made) return nullptr;
    HPDF_Dict_RemoveElement(made, "S");
    HPDF_Dict_RemoveElement(made, "St");
    return made;
}

HPDF_Array array_in(HPDF_Doc document, HPDF_Dict parent, const char* name) {
    auto* made = HPDF_Array_New(document->mmgr);
    return made && HPDF_Dict_Add(parent, name, made) == HPDF_OK ? made : nullptr;
}

void add_number(HPDF_Array to, std::size_t number) {
    HPDF_Array_AddNumber(to, static_cast<HPDF_INT32>(number));
}

bool fill(HPDF_Doc document, HPDF_Dict node, std::span<const page_label> labels) {
    auto* pairs = array_in(document, node, "Nums");
    for (const auto& label : labels) {
        auto* made = pairs ? label_of(document, label) : nullptr;
        if (!made) return false;
        add_number(pairs, label.at);
        if (HPDF_Array_Add(pairs, made) != HPDF_OK) return false;
    }
    return true;
}

/// Some labels in a node of their own, which says from which page to which they are.
bool add_node(HPDF_Doc document, HPDF_Array to, std::span<const page_label> labels) {
    auto* node = HPDF_Dict_New(document->mmgr);
    if (!node || HPDF_Xref_Add(document->xref, node) != HPDF_OK) return false;
    auto* limits = array_in(document, node, "Limits");
    if (!limits) return false;
    add_number(limits, labels.front().at);
    add_number(limits, labels.back().at);
    return fill(document, node, labels) && HPDF_Array_Add(to, node) == HPDF_OK;
}

} // namespace

void put_labels(HPDF_Doc document, const std::vector<page_label>& labels) {
    if (labels.empty()) return;
    auto* tree = HPDF_Dict_New(document->mmgr);
    if (!tree || HPDF_Dict_Add(document->catalog, "PageLabels", tree) != HPDF_OK) return;
    std::span rest(labels);
    if (rest.size() <= most_in_node) {
        fill(document, tree, rest);
        return;
    }
    auto* nodes = array_in(document, tree, "Kids");
    while (nodes && !rest.empty()) {
        const auto part = rest.first(std::min(rest.size(), most_in_node));
        if (!add_node(document, nodes, part)) return;
        rest = rest.subspan(part.size());
    }
}

} // namespace benchcard::pdf
