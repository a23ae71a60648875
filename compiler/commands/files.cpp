#include "compiler/commands/files.hpp"

#include "grammar/limits.hpp"

#include <atomic>
#include <cerrno>
#include <csignal>
#include <cstdlib>
#include <cstring>
#include <fcntl.h>
#include <filesystem>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

namespace benchcard::commands {

namespace {

/// A file descriptor that closes itself.
class descriptor {
  public:
    explicit descriptor(int number) : number_(number) {}
    ~descriptor() {
        if (number_ > STDERR_FILENO) ::close(number_);
    }
    descriptor(const descriptor&) = delete;
    descriptor& operator=(const descriptor&) = delete;
    int number() const { return number_; }

  private:
    int number_;
};

constexpr auto no_file = "it is a pipe or a device, not a file";

/// Why the system refused, in words that say more of the file than of the system.
std::string reason() {
    switch (errno) {
    case ENXIO: // a socket, or a device that is not there
        return no_file;
    case ENOENT:
        return "there is no such file";
    case ENOTDIR:
        return "its path goes through a file as if it were a folder";
    case EACCES:
    case EPERM:
        return "its permissions do not allow it";
    case ELOOP:
        return "it is a link that leads back to itself";
    case ENAMETOOLONG:
        return "its name is too long";
    case EROFS:
        return "it is on a disk that is only for reading";
    case ENOSPC:
        return "there is no room left";
    case EFBIG:
    case EDQUOT:
        return "it would be larger than it may be";
    case EBADF:
        return "it is closed";
    default:
        return std::strerror(errno);
    }
}

std::string cannot_write(const std::string& path, const std::string& why) {
    return fmt::format("{} cannot be written: {}", path, why);
}

recipe::file_text read_all(int from, std::size_t most) {
    recipe::file_text result;
    char buffer[1 << 16];
    while (true) {
        const auto count = ::read(from, buffer, sizeof buffer);
        if (count < 0 && errno == EINTR) continue;
        if (count < 0) return {false, "", reason()};
        if (count == 0) break;
        result.text.append(buffer, static_cast<std::size_t>(count));
        if (result.text.size() > most)
            return {false, "",
                    fmt::format("it is larger than {} MB, which is the most that can be read",
                                most >> 20)};
    }
    result.is_read = true;
    return result;
}

bool write_all(int to, std::string_view bytes) {
    while (!bytes.empty()) {
        const auto count = ::write(to, bytes.data(), bytes.size());
        if (count < 0 && errno == EINTR) continue;
        if (count < 0) return false;
        bytes.remove_prefix(static_cast<std::size_t>(count));
    }
    return true;
}

/// A file that is written before it takes its name. It has none till then where the system can do
/// that, so that whatever ends the program leaves nothing behind; elsewhere one that begins with a
/// dot, and is removed again unless kept.
class temporary {
  public:
    explicit temporary(const std::filesystem::path& beside)
        : folder_(beside.parent_path().empty() ? "." : beside.parent_path()) {
        const bool can_be_named = ::access("/proc/self/fd", X_OK) == 0;
        if (can_be_named) file_ = ::open(folder_.c_str(), O_TMPFILE | O_WRONLY | O_CLOEXEC, 0600);
        if (file_ >= 0) return;
        name_ = (folder_ / ".benchcard.XXXXXX").string();
        file_ = ::mkstemp(name_.data());
        if (file_ < 0) name_.clear();
    }
    ~temporary() {
        if (file_ >= 0) ::close(file_);
        if (!name_.empty()) ::unlink(name_.c_str());
    }
    temporary(const temporary&) = delete;
    temporary& operator=(const temporary&) = delete;
    int file() const { return file_; }
    bool rename_to(const std::string& path) {
        if (name_.empty() && !give_name()) return false;
        if (::rename(name_.c_str(), path.c_str()) != 0) return false;
        name_.clear();
        return true;
    }

  private:
    std::filesystem::path folder_;
    std::string name_; ///< empty while it has none
    int file_ = -1;

    /// A name beside the one it gets: only renaming puts a file in the place of another.
    bool give_name() {
        static std::atomic<unsigned> number = 0;
        const auto from = fmt::format("/proc/self/fd/{}", file_);
        constexpr int most_tries = 100;
        for (int i = 0; i < most_tries; ++i) {
            const auto name = folder_ / fmt::format(".benchcard.{}.{}", ::getpid(), ++number);
            if (::linkat(AT_FDCWD, from.c_str(), AT_FDCWD, name.c_str(), AT_SYMLINK_FOLLOW) == 0) {
                name_ = name;
                return true;
            }
            if (errno != EEXIST) return false;
        }
        return false;
    }
};

/// Reads the umask, which can be read only by setting it: once, before another thread makes a file.
mode_t umask_of_process() {
    static const mode_t mask = [] {
        const auto now = ::umask(0);
        ::umask(now);
        return now;
    }();
    return mask;
}

/// The rights a new file gets: those of the file it replaces, or what the umask leaves.
mode_t rights_for(const std::string& path) {
    struct stat old = {};
    if (::stat(path.c_str(), &old) == 0) return old.st_mode & 07777;
    return 0666 & ~umask_of_process();
}

/// The file a path leads to, through links, so that a link stays one.
std::filesystem::path behind_links(const std::string& path) {
    std::error_code failed;
    auto real = std::filesystem::canonical(path, failed);
    return failed ? std::filesystem::path(path) : real;
}

/// Why no file could be made under a name: most often its folder is not there.
std::string no_new_file(const std::filesystem::path& path) {
    const auto failure = errno;
    std::error_code failed;
    const auto folder = path.parent_path();
    if (failure == ENOENT && !folder.empty() && !std::filesystem::exists(folder, failed))
        return fmt::format("there is no folder {}", folder.string());
    if (failure == ENOENT || failure == EACCES) return "its folder takes no new files";
    errno = failure;
    return reason();
}

/// A device has no name to take over, so it is written straight.
std::optional<std::string> write_device(const std::string& path, std::string_view bytes) {
    const descriptor device(::open(path.c_str(), O_WRONLY | O_NONBLOCK | O_CLOEXEC));
    if (device.number() < 0 && errno == ENXIO)
        return cannot_write(path, "it is a pipe that nobody reads");
    if (device.number() < 0) return cannot_write(path, reason());
    ::fcntl(device.number(), F_SETFL, O_WRONLY);
    if (!write_all(device.number(), bytes)) return cannot_write(path, reason());
    return std::nullopt;
}

} // namespace

void expect_failing_writes() { std::signal(SIGXFSZ, SIG_IGN); }

void hold_standard_streams() {
    umask_of_process();
    // A file is given the lowest number that is free. Opened the other way round, so that using
    // a stream that was closed still fails.
    for (const auto& [number, way] :
         {std::pair{STDIN_FILENO, O_WRONLY}, {STDOUT_FILENO, O_RDONLY}, {STDERR_FILENO, O_RDONLY}})
        if (::fcntl(number, F_GETFD) < 0 && ::open("/dev/null", way) < 0) return;
}

void complain(std::string_view text) { write_all(STDERR_FILENO, text); }

recipe::file_text read_standard_input() {
    return read_all(STDIN_FILENO, grammar::limits::file_bytes);
}

recipe::file_text read_file(const std::string& path) {
    return read_file_up_to(grammar::limits::file_bytes, path);
}

recipe::file_text read_file_up_to(std::size_t most, const std::string& path) {
    const descriptor file(::open(path.c_str(), O_RDONLY | O_NONBLOCK | O_CLOEXEC));
    if (file.number() < 0) return {false, "", reason()};
    struct stat about = {};
    if (::fstat(file.number(), &about) != 0) return {false, "", reason()};
    if (S_ISDIR(about.st_mode)) return {false, "", "it is a folder"};
    if (!S_ISREG(about.st_mode)) return {false, "", no_file};
    return read_all(file.number(), most);
}

std::optional<std::string> write_file(const std::string& path, std::string_view bytes) {
    if (path == "-") {
        if (!write_all(STDOUT_FILENO, bytes)) return cannot_write("standard output", reason());
        return std::nullopt;
    }
    struct stat about = {};
    if (::stat(path.c_str(), &about) == 0 && S_ISDIR(about.st_mode))
        return cannot_write(path, "it is a folder");
    if (::stat(path.c_str(), &about) == 0 && !S_ISREG(about.st_mode))
        return write_device(path, bytes);
    const auto target = behind_links(path);
    temporary file(target);
    if (file.file() < 0) return cannot_write(path, no_new_file(target));
    if (::fchmod(file.file(), rights_for(target)) != 0 || !write_all(file.file(), bytes) ||
        ::fsync(file.file()) != 0 || !file.rename_to(target))
        return cannot_write(path, reason());
    return std::nullopt;
}

} // namespace benchcard::commands
