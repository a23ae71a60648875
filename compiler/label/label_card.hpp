#pragma once

#include "compiler/label/shown.hpp"
#include "styles/card.hpp"
#include "styles/paper.hpp"

#include <string>
#include <vector>

namespace benchcard::label {

/// How high the small letters of a label must stand at least, in millimetres: 1.2, or 0.9 where the
/// largest surface of the pack is under 80 cm² (Reg. (EU) No 1169/2011, Art. 13(2) and (3); Annex
/// IV for what an x-height is). The label is taken for that surface.
double least_x_height(const styles::paper& label);

/// The draft to print, a card for each law followed: the list, what stands out in it in bold too,
/// the packets to read, the use-by date or a blank for it, and that it is a draft. `revision` is
/// the recipe's own.
std::vector<styles::card> cards_of(const draft& d, const std::string& revision,
                                   const styles::paper& label);

} // namespace benchcard::label
