// check_speed FOLDER THREADS: compiles and checks all recipes below a folder, as `check` does.
// Prints how many there are, how many messages, the seconds it took and the seconds of work.

#include "compiler/commands/compile.hpp"
#include "compiler/commands/files.hpp"
#include "folder.hpp"

#include <atomic>
#include <cstdlib>
#include <fmt/format.h>
#include <thread>

using namespace benchcard;

int main(int argc, char** argv) {
    if (argc != 3) return 2;
    const auto begin = bench::seconds_by(CLOCK_MONOTONIC);
    const auto paths = bench::recipes_below(argv[1]);
    std::atomic<std::size_t> next = 0, messages = 0;
    const auto work = [&] {
        for (auto i = next++; i < paths.size(); i = next++)
            messages += commands::compile(paths[i], measures::system::unstated)->messages.size();
    };
    std::vector<std::jthread> threads;
    for (int i = 1; i < std::atoi(argv[2]); ++i) threads.emplace_back(work);
    work();
    threads.clear();
    fmt::print("{} {} {} {}\n", paths.size(), messages.load(),
               bench::seconds_by(CLOCK_MONOTONIC) - begin,
               bench::seconds_by(CLOCK_PROCESS_CPUTIME_ID));
}
