#include "program.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <chrono>
#include <csignal>
#include <cstdlib>
#include <fcntl.h>
#include <filesystem>
#include <fstream>
#include <poll.h>
#include <pty.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>

namespace benchcard::program {

const std::string tart = "recipe: Plain tart\n"
                         "makes: 2 tarts\n"
                         "\n"
                         "component: Dough\n"
                         "station: pastry bench\n"
                         "200 g   plain flour\n"
                         "100 g   unsalted butter\n"
                         "- Rub [butter] into [flour]; chill for [1 h].\n";

namespace {

constexpr auto longest_run = std::chrono::seconds(40);

[[noreturn]] void become(const std::vector<std::string>& arguments, const surroundings& where) {
    if (!where.folder.empty() && ::chdir(where.folder.c_str()) != 0) ::_exit(126);
    if (where.largest_file >= 0) {
        const auto size = static_cast<rlim_t>(where.largest_file);
        const rlimit most{size, size};
        if (::setrlimit(RLIMIT_FSIZE, &most) != 0) ::_exit(124);
    }
    if (where.as_nobody && ::geteuid() == 0) {
        constexpr uid_t nobody = 65534;
        if (::setgid(nobody) != 0 || ::setuid(nobody) != 0) ::_exit(123);
    }
    if (where.most_memory >= 0) {
        const auto size = static_cast<rlim_t>(where.most_memory);
        const rlimit most{size, size};
        if (::setrlimit(RLIMIT_AS, &most) != 0) ::_exit(124);
    }
    for (const auto& [name, value] : where.environment) ::setenv(name.c_str(), value.c_str(), 1);
    std::string name = "benchcard";
    std::vector<char*> line = {name.data()};
    auto copies = arguments;
    for (auto& word : copies) line.push_back(word.data());
    line.push_back(nullptr);
    ::execv(BENCHCARD_PROGRAM, line.data());
    ::_exit(127);
}

void redirect(const std::string& path, int flags, int number) {
    const int file = ::open(path.c_str(), flags, 0666);
    if (file < 0) ::_exit(125);
    ::dup2(file, number);
    ::close(file);
}

/// The exit code, or -1 after a signal or when the time is up.
int wait_for_end(pid_t child) {
    const auto until = std::chrono::steady_clock::now() + longest_run;
    int status = 0;
    while (::waitpid(child, &status, WNOHANG) == 0) {
        if (std::chrono::steady_clock::now() > until) {
            ::kill(child, SIGKILL);
            ::waitpid(child, &status, 0);
            return -1;
        }
        std::this_thread::sleep_for(std::chrono::milliseconds(2));
    }
    return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

} // namespace

outcome run(const std::vector<std::string>& arguments, const surroundings& where) {
    const folder streams; // files, so that no stream can fill up and hold the program
    const auto in = streams.file("in", where.input);
    const auto out = where.out_to.empty() ? streams.file("out", "") : where.out_to;
    const auto err = where.err_to.empty() ? streams.file("err", "") : where.err_to;
    const auto child = ::fork();
    if (child == 0) {
        redirect(in, O_RDONLY, STDIN_FILENO);
        redirect(out, O_WRONLY, STDOUT_FILENO);
        redirect(err, O_WRONLY, STDERR_FILENO);
        if (where.out_closed) ::close(STDOUT_FILENO);
        become(arguments, where);
    }
    outcome result;
    result.code = wait_for_end(child);
    if (where.out_to.empty()) result.out = bytes_of(out);
    if (where.err_to.empty()) result.err = bytes_of(err);
    return result;
}

std::string run_on_terminal(const std::vector<std::string>& arguments,
                            const std::map<std::string, std::string>& environment) {
    int terminal = -1;
    const auto child = ::forkpty(&terminal, nullptr, nullptr, nullptr);
    if (child == 0) become(arguments, {.environment = environment});
    std::string shown;
    char buffer[4096];
    pollfd readable = {terminal, POLLIN, 0};
    while (::poll(&readable, 1, 10'000) > 0) {
        const auto count = ::read(terminal, buffer, sizeof buffer);
        if (count <= 0) break; // a terminal whose program has ended gives an error
        shown.append(buffer, static_cast<std::size_t>(count));
    }
    ::close(terminal);
    wait_for_end(child);
    return shown;
}

background::background(const std::vector<std::string>& arguments, const surroundings& where) {
    const auto err = streams_.file("err", "");
    child_ = ::fork();
    if (child_ == 0) {
        redirect("/dev/null", O_RDONLY, STDIN_FILENO);
        redirect("/dev/null", O_WRONLY, STDOUT_FILENO);
        redirect(err, O_WRONLY | O_APPEND, STDERR_FILENO);
        become(arguments, where);
    }
}

background::~background() {
    if (!is_running()) return;
    ::kill(child_, SIGKILL);
    ::waitpid(child_, nullptr, 0);
}

bool background::is_running() {
    if (child_ > 0 && ::waitpid(child_, nullptr, WNOHANG) != 0) child_ = -1;
    return child_ > 0;
}

void background::end_with(int signal) {
    if (!is_running()) return;
    ::kill(child_, signal);
    wait_for_end(child_);
    child_ = -1;
}

std::string background::wait_for(const std::string& words, std::size_t times) {
    const auto until = std::chrono::steady_clock::now() + longest_run;
    while (true) {
        const auto said = bytes_of(streams_ / "err");
        std::size_t found = 0;
        for (auto at = said.find(words); at != said.npos; at = said.find(words, at + 1)) ++found;
        if (found >= times || std::chrono::steady_clock::now() > until) return said;
        std::this_thread::sleep_for(std::chrono::milliseconds(5));
    }
}

folder::folder() : path_(std::filesystem::temp_directory_path() / "benchcard-test.XXXXXX") {
    REQUIRE(::mkdtemp(path_.data()) != nullptr);
}

folder::~folder() {
    std::error_code failed;
    std::filesystem::remove_all(path_, failed);
}

std::string folder::file(const std::string& name, const std::string& text) const {
    const auto path = *this / name;
    std::ofstream(path, std::ios::binary) << text;
    return path;
}

std::vector<std::string> folder::names() const {
    std::vector<std::string> result;
    for (const auto& entry : std::filesystem::directory_iterator(path_))
        result.push_back(entry.path().filename());
    std::sort(result.begin(), result.end());
    return result;
}

std::string bytes_of(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

} // namespace benchcard::program
