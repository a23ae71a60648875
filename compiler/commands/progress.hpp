#pragma once

#include <chrono>
#include <cstddef>
#include <string>

namespace benchcard::commands {

/// How far a long command has come: how many of how many, how many a second, the time left.
std::string progress_line(std::size_t done, std::size_t all, std::chrono::milliseconds so_far);

/// That line on standard error, where it is a terminal; nothing anywhere else. It is gone when
/// something else is to be said, and at the end.
class progress {
  public:
    progress(std::size_t all, bool is_wanted);
    ~progress() { clear(); }
    progress(const progress&) = delete;
    progress& operator=(const progress&) = delete;

    void step();
    void clear();

  private:
    using clock = std::chrono::steady_clock;
    std::size_t done_ = 0, all_;
    bool is_shown_ = false, is_wanted_;
    clock::time_point start_ = clock::now(), last_ = start_;
};

} // namespace benchcard::commands
