#pragma once

#include <algorithm>
#include <ctime>
#include <filesystem>
#include <string>
#include <vector>

namespace benchcard::bench {

/// Every recipe below a folder, by name.
inline std::vector<std::string> recipes_below(const std::string& folder) {
    std::vector<std::string> paths;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(folder))
        if (entry.path().extension() == ".recipe") paths.push_back(entry.path().string());
    std::sort(paths.begin(), paths.end());
    return paths;
}

/// Seconds that a clock of the system shows; CLOCK_PROCESS_CPUTIME_ID counts all threads' work.
inline double seconds_by(clockid_t clock) {
    timespec now{};
    ::clock_gettime(clock, &now);
    return static_cast<double>(now.tv_sec) + static_cast<double>(now.tv_nsec) * 1e-9;
}

/// The seconds of work that doing something takes.
template <typename Work> double seconds_of(Work work) {
    const auto begin = seconds_by(CLOCK_PROCESS_CPUTIME_ID);
    work();
    return seconds_by(CLOCK_PROCESS_CPUTIME_ID) - begin;
}

} // namespace benchcard::bench
