#include "any_text.hpp"
#include "compiler/diagnostics/formats.hpp"
#include "compiler/diagnostics/render.hpp"
#include "input.hpp"
#include "mending.hpp"
#include "target.hpp"

using namespace benchcard;

namespace {

void say_in_all_forms(const commands::compiled& c) {
    const diagnostics::report all[] = {{&c.messages, &c.files.sources}};
    diagnostics::render_all(c.messages, c.files.sources, diagnostics::colour::yes);
    diagnostics::as_gcc(all);
    diagnostics::as_json(all);
    diagnostics::as_sarif(all, true);
}

} // namespace

/// A recipe and the files it uses, read, understood, checked and mended: all places lie within
/// their texts, all messages can be shown, and a repair does no harm.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const auto in = fuzz::input_in(fuzz::text_of(data, size));
    const auto c = fuzz::compiled(in);
    for (const auto& m : c->messages)
        fuzz::must_be_faultless(grammar::fault_of_places(m, c->files.sources));
    say_in_all_forms(*c);
    fuzz::must_be_faultless(language::mended_twice(in.recipe, in.files).fault);
    return 0;
}
