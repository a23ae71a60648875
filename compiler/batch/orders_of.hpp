#pragma once

#include "compiler/batch/orders.hpp"

/// One function for each way to order.
namespace benchcard::batch {

std::variant<answer, refusal> answer_to_make(const recipe::recipe& r, const to_make& make, fit how);
std::variant<answer, refusal> answer_from_stock(const recipe::recipe& r, const from_stock& stock,
                                                fit how);
std::variant<answer, refusal> answer_in_tin(const recipe::recipe& r, const in_tin& order);
std::variant<answer, refusal> answer_of_base(const recipe::recipe& r, const of_base& order,
                                             fit how);

/// Whether a line is of what `percent:` names, by the words of that: `flour` is every flour.
bool is_of_base(const recipe::line& l, const std::vector<std::string>& wanted);

} // namespace benchcard::batch
