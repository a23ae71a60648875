#pragma once

#include "compiler/batch/batch.hpp"

namespace benchcard::batch {

/// How often the written batch of each component is made, so that the product is made `factor`
/// times. Up to a fiftieth that is over in the written batch is what a bowl keeps, and goes on
/// being made; so does all of a component that nothing uses, or of which it is not known how much
/// is used. What is `whole-batch: yes` is made whole, and so, if it fits `whole`, is all but the
/// assembly.
std::vector<exact> factors_for(const recipe::recipe& r, const exact& factor, fit how);

/// The same before any of it is made whole: in proportion to the factor.
std::vector<exact> exact_factors_for(const recipe::recipe& r, const exact& factor, fit how);

} // namespace benchcard::batch
