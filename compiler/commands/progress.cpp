#include "compiler/commands/progress.hpp"

#include "compiler/commands/files.hpp"

#include <cstdlib>
#include <fmt/format.h>
#include <string_view>
#include <unistd.h>

namespace benchcard::commands {

namespace {

using std::chrono::milliseconds;

/// A command that is over sooner needs no bar, and nobody reads one that changes more often.
constexpr milliseconds first_shown{300}, between{100};

bool can_go_back() {
    const char* terminal = std::getenv("TERM");
    return ::isatty(STDERR_FILENO) && !(terminal && std::string_view(terminal) == "dumb");
}

std::string time_of(std::size_t seconds) {
    if (seconds < 60) return fmt::format("{} s", seconds);
    return fmt::format("{} min {} s", seconds / 60, seconds % 60);
}

} // namespace

std::string progress_line(std::size_t done, std::size_t all, milliseconds so_far) {
    constexpr std::size_t width = 24;
    const auto filled = all == 0 ? width : done * width / all;
    const auto bar = std::string(filled, '#') + std::string(width - filled, '.');
    auto line = fmt::format("{} {} of {}", bar, done, all);
    const auto elapsed = static_cast<std::size_t>(so_far.count());
    if (done == 0 || elapsed == 0) return line;
    const auto left = ((all - done) * elapsed / done + 999) / 1000;
    return line + fmt::format(", {} a second, {} left", done * 1000 / elapsed, time_of(left));
}

progress::progress(std::size_t all, bool is_wanted)
    : all_(all), is_wanted_(is_wanted && all > 1 && can_go_back()) {}

void progress::step() {
    ++done_;
    const auto now = clock::now();
    if (!is_wanted_ || now - start_ < first_shown || now - last_ < between) return;
    last_ = now;
    is_shown_ = true;
    complain("\r\033[K" +
             progress_line(done_, all_, std::chrono::duration_cast<milliseconds>(now - start_)));
}

void progress::clear() {
    if (is_shown_) complain("\r\033[K");
    is_shown_ = false;
}

} // namespace benchcard::commands
