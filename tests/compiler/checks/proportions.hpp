#pragma once

#include "../recipe/reading.hpp"

/// Mixes whose proportions are asked about.
namespace benchcard::testing {

/// The kinds of messages on a recipe of one block, those about steps and names left aside.
inline kinds said_of(const std::string& title, const std::string& lines,
                     const std::string& steps = "") {
    const auto c = compiled("recipe: " + title + "\n" + lines + "\n" + steps);
    kinds result;
    for (const auto& kind : kinds_of(*c))
        if (kind != "unused-ingredient" && kind != "unknown-ingredient") result.push_back(kind);
    return result;
}

} // namespace benchcard::testing
