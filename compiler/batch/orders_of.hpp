#pragma once

#include "compiler/batch/orders.hpp"

/// One function for each way to order.
namespace benchcard::batch {

std::variant<answer, refusal> answer_to_make(const recipe::recipe& r, const to_make& make, fit how);
std::variant<answer, refusal> answer_from_stock(const recipe::recipe& r, const from_stock& stock,
                                                fit how);
std::variant<answer, refusal> answer_in_tin(const recipe::recipe& r, const in_tin& wanted);
std::variant<answer, refusal> answer_of_base(const recipe::recipe& r, const of_base& wanted_base,
                                             fit how);

} // namespace benchcard::batch
