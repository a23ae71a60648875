#pragma once

#include "compiler/editor/server.hpp"

namespace benchcard::editor {

/// Talks to an editor over two streams until it says `exit`, or one of the streams ends: one thread
/// reads, this one works. Gives the exit code.
int serve(int from, int to, surroundings outside);

} // namespace benchcard::editor
