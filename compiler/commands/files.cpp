#include "compiler/commands/files.hpp"

#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

namespace benchcard::commands {

namespace {

constexpr std::size_t largest_file = 16u << 20;

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

std::string reason() { return std::strerror(errno); }

recipe::file_text read_all(int from) {
    recipe::file_text result;
    char buffer[1 << 16];
    while (true) {
        const auto count = ::read(from, buffer, sizeof buffer);
        if (count < 0 && errno == EINTR) continue;
        if (count < 0) return {false, "", reason()};
        if (count == 0) break;
        result.text.append(buffer, static_cast<std::size_t>(count));
        if (result.text.size() > largest_file)
            return {false, "", fmt::format("it is larger than {} MB, which no recipe is", largest_file >> 20)};
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

/// The name under which a file is written before it takes its own. Removed again unless kept.
class temporary {
  public:
    explicit temporary(const std::string& beside) : name_(beside + ".XXXXXX") { file_ = ::mkstemp(name_.data()); }
    ~temporary() {
        if (file_ >= 0) ::close(file_);
        if (file_ >= 0 && !kept_) ::unlink(name_.c_str());
    }
    temporary(const temporary&) = delete;
    temporary& operator=(const temporary&) = delete;
    int file() const { return file_; }
    bool rename_to(const std::string& path) {
        kept_ = ::rename(name_.c_str(), path.c_str()) == 0;
        return kept_;
    }

  private:
    std::string name_;
    int file_ = -1;
    bool kept_ = false;
};

/// The rights a new file gets: those of the file it replaces, or what the umask leaves.
mode_t rights_for(const std::string& path) {
    struct stat old = {};
    if (::stat(path.c_str(), &old) == 0) return old.st_mode & 07777;
    const auto mask = ::umask(0);
    ::umask(mask);
    return 0666 & ~mask;
}

} // namespace

recipe::file_text read_file(const std::string& path) {
    if (path == "-") return read_all(STDIN_FILENO);
    const descriptor file(::open(path.c_str(), O_RDONLY | O_NONBLOCK | O_CLOEXEC));
    if (file.number() < 0) return {false, "", reason()};
    struct stat about = {};
    if (::fstat(file.number(), &about) != 0) return {false, "", reason()};
    if (S_ISDIR(about.st_mode)) return {false, "", "it is a folder"};
    if (!S_ISREG(about.st_mode)) return {false, "", "it is not a file"};
    return read_all(file.number());
}

std::optional<std::string> write_file(const std::string& path, std::string_view bytes) {
    if (path == "-") {
        if (!write_all(STDOUT_FILENO, bytes)) return "standard output: " + reason();
        return std::nullopt;
    }
    struct stat about = {};
    if (::stat(path.c_str(), &about) == 0 && !S_ISREG(about.st_mode)) {
        if (S_ISDIR(about.st_mode)) return path + ": it is a folder";
        // A device has no name to take over, so it is written straight.
        const descriptor device(::open(path.c_str(), O_WRONLY | O_CLOEXEC));
        if (device.number() < 0 || !write_all(device.number(), bytes)) return path + ": " + reason();
        return std::nullopt;
    }
    temporary file(path);
    if (file.file() < 0 || ::fchmod(file.file(), rights_for(path)) != 0 || !write_all(file.file(), bytes) ||
        ::fsync(file.file()) != 0 || !file.rename_to(path))
        return path + ": " + reason();
    return std::nullopt;
}

} // namespace benchcard::commands
