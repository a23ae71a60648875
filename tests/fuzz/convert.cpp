#include "any_text.hpp"
#include "compiler/commands/conversion.hpp"
#include "grammar/loose.hpp"
#include "target.hpp"

using namespace benchcard;

namespace {

void convert(const std::string& line, measures::system whose) {
    const auto amount = grammar::as_ingredient_line(line);
    const auto c = commands::convert_amount(amount, whose);
    const std::vector<grammar::source> texts = {{0, "amount", amount}};
    for (const auto& m : c.messages) fuzz::must_be_faultless(grammar::fault_of_places(m, texts));
    if (c.weight) fuzz::must(!c.why.empty(), "how a weight came about is not said");
    if (!c.weight && !c.is_read)
        fuzz::must(grammar::as_ingredient_line(amount) == amount, "a line is pasted in twice");
}

} // namespace

/// Lines as people paste them: the first byte says whose cups they are.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    if (size == 0) return 0;
    const auto& all = measures::all_systems;
    const auto whose = data[0] % (std::size(all) + 1);
    const grammar::source text(0, "lines", fuzz::text_of(data + 1, size - 1));
    for (std::size_t i = 1; i <= text.line_count(); ++i) {
        const std::string line(text.line(i));
        if (grammar::first_not_utf8(line) != line.npos) continue;
        convert(line, whose < std::size(all) ? all[whose] : measures::system::unstated);
    }
    return 0;
}
