#include "compiler/commands/commands.hpp"
#include "compiler/commands/confined.hpp"
#include "compiler/commands/files.hpp"

#include <cerrno>
#include <chrono>
#include <cstring>
#include <filesystem>
#include <fmt/format.h>
#include <map>
#include <poll.h>
#include <set>
#include <sys/inotify.h>
#include <unistd.h>

namespace benchcard::commands {

namespace {

namespace fs = std::filesystem;

/// How long the files must be left alone before they are read: an editor saves in several strokes.
constexpr int quiet_milliseconds = 50;

/// The folders of some files, watched for any of these being written, put in place or taken away.
/// Folders and not files, since editors save under another name and rename.
class file_watch {
  public:
    file_watch() : number_(::inotify_init1(IN_CLOEXEC | IN_NONBLOCK)) {}
    ~file_watch() {
        if (number_ >= 0) ::close(number_);
    }
    file_watch(const file_watch&) = delete;
    file_watch& operator=(const file_watch&) = delete;
    bool works() const { return number_ >= 0; }

    void set(const std::set<std::string>& files) {
        files_.clear();
        for (const auto& file : files) {
            const fs::path path(file);
            const auto folder = path.parent_path().empty() ? "." : path.parent_path().string();
            // Adding a folder that is watched already gives the same number.
            const int watch = ::inotify_add_watch(number_, folder.c_str(),
                                                  IN_CLOSE_WRITE | IN_MOVED_TO | IN_MOVED_FROM |
                                                      IN_DELETE | IN_ONLYDIR);
            if (watch >= 0) files_.emplace(watch, path.filename().string());
        }
    }

    /// Waits until one of the files has changed and all have been left alone for a moment.
    bool wait() {
        bool has_changed = false;
        while (true) {
            pollfd readable = {number_, POLLIN, 0};
            const auto ready = ::poll(&readable, 1, has_changed ? quiet_milliseconds : -1);
            if (ready < 0 && errno != EINTR) return false;
            if (ready == 0) return true;
            if (ready > 0 && take_events()) has_changed = true;
        }
    }

  private:
    int number_;
    std::multimap<int, std::string> files_; ///< names by the watch of their folder

    /// Whether one of the files was among what happened.
    bool take_events() {
        alignas(inotify_event) char buffer[1 << 14];
        bool is_ours = false;
        ssize_t count = 0;
        while ((count = ::read(number_, buffer, sizeof buffer)) > 0)
            for (ssize_t i = 0; i < count;) {
                inotify_event event{};
                std::memcpy(&event, buffer + i, sizeof event);
                const char* name = buffer + i + sizeof event;
                if (event.mask & IN_Q_OVERFLOW) is_ours = true;
                if (event.len > 0)
                    for (auto [f, end] = files_.equal_range(event.wd); f != end; ++f)
                        if (f->second == name) is_ours = true;
                i += static_cast<ssize_t>(sizeof event + event.len);
            }
        return is_ours;
    }
};

/// The recipes and all files that they use, also those that are not there yet.
std::set<std::string> files_of(const print_options& options) {
    std::set<std::string> result;
    for (const auto& recipe : options.files) {
        const auto reader = confined_to(own_folder(options.confined, recipe), read_file);
        const auto read = [&](const std::string& path) {
            result.insert(path);
            return reader(path);
        };
        auto file = read(recipe);
        if (file.is_read) recipe::gather(recipe, std::move(file.text), read);
    }
    return result;
}

/// Prints once, and says how that went in a line.
void print_once(const print_options& options, const printer& print) {
    using clock = std::chrono::steady_clock;
    const auto start = clock::now();
    const auto code = print(options);
    const auto took =
        std::chrono::duration_cast<std::chrono::milliseconds>(clock::now() - start).count();
    std::error_code failed;
    const auto what = code == done                         ? "printed"
                      : fs::exists(options.output, failed) ? "kept as it was"
                                                           : "not printed yet";
    complain(fmt::format("benchcard: {}: {}, {} ms\n", options.output, what, took));
}

} // namespace

int watch(const print_options& options, const printer& print) {
    file_watch files;
    if (!files.works()) {
        complain(fmt::format("benchcard: the files cannot be watched: {}\n", std::strerror(errno)));
        return not_run;
    }
    do {
        // Before it is printed, so that a change made meanwhile is seen.
        files.set(files_of(options));
        print_once(options, print);
    } while (files.wait());
    return not_run;
}

} // namespace benchcard::commands
