#include "grammar/units.hpp"

namespace benchcard::grammar {

std::string_view short_name(unit u) {
    switch (u) {
    case unit::milligram:
        return "mg";
    case unit::gram:
        return "g";
    case unit::kilogram:
        return "kg";
    case unit::ounce:
        return "oz";
    case unit::pound:
        return "lb";
    case unit::millilitre:
        return "ml";
    case unit::centilitre:
        return "cl";
    case unit::decilitre:
        return "dl";
    case unit::litre:
        return "l";
    case unit::drop:
        return "drop";
    case unit::dash:
        return "dash";
    case unit::pinch:
        return "pinch";
    case unit::teaspoon:
        return "tsp";
    case unit::dessertspoon:
        return "dessertspoon";
    case unit::tablespoon:
        return "tbsp";
    case unit::fluid_ounce:
        return "fl oz";
    case unit::gill:
        return "gill";
    case unit::cup:
        return "cup";
    case unit::pint:
        return "pint";
    case unit::quart:
        return "quart";
    case unit::gallon:
        return "gallon";
    case unit::stick:
        return "stick";
    }
    return {};
}

} // namespace benchcard::grammar
