#pragma once

#include "compiler/batch/batch.hpp"

namespace benchcard::batch {

/// What an order comes to.
struct answer {
    exact factor = 1;                   ///< of the product
    std::vector<std::string> reckoning; ///< how it came about, a sentence each; empty for a factor
    std::vector<exact> each = {};       ///< what a piece of each component weighs, as `scale_each`
    std::optional<grammar::tin> tin = {}; ///< that is baked in instead of the recipe's
};

/// What an order comes to when components are made as `how` says, or why it cannot be made.
std::variant<answer, refusal> answer_to(const recipe::recipe& r, const order& wanted, fit how);

/// The batch for an order, with its reckoning. Without `how` the written batch is made as written,
/// and of every other order what is needed.
std::variant<batch, refusal> batch_for(const recipe::recipe& r, const order& wanted,
                                       std::optional<fit> how);

/// `2.5 kg`, `12 buns`: what the product or a component makes in the written batch times a factor.
std::string said_made(const recipe::component& c, const exact& factor);
/// A factor to three places: `0.756`.
std::string said_factor(const exact& factor);
/// Grams as a scale shows them: `165 g`.
std::string said_weight(const exact& grams);

/// Whether a line is of what `percent:` names, by the words of that: `flour` is every flour.
bool is_of_base(const recipe::line& l, const std::vector<std::string>& wanted);

} // namespace benchcard::batch
