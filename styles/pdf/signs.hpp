#pragma once

#include "styles/layout/page.hpp"

/// Signs that are drawn with lines and small figures, for where no font has them: fractions, the
/// box to tick, arrows and a few more.
namespace benchcard::pdf {

/// Which letters a drawn sign goes with: its figures are set in that face, and its lines are as
/// thick as that face's, in thousandths of the type size.
struct lettering {
    layout::face_id face = 0;
    int stroke = 0;
};

/// The measures of every sign that can be drawn beside letters of those measures, which must have
/// the figures from 0 to 9.
layout::face_metrics measures_of_signs(const layout::face_metrics& letters);

/// One sign as it stands in a run at `x`: shapes, and figures in the face of the lettering. A code
/// that is no drawn sign gives nothing.
layout::page drawn_sign(char32_t code, const layout::text_run& run, double x,
                        const lettering& beside, const layout::face_metrics& letters);

} // namespace benchcard::pdf
