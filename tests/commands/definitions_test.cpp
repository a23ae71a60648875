#include "program.hpp"

#include <catch2/catch.hpp>
#include <cstdio>
#include <set>
#include <sstream>

/// What shells and `man` are told, by these themselves.
namespace benchcard::program {

namespace {

/// What a command of the system prints; its exit code must be 0.
std::string from_shell(const std::string& command) {
    std::string result;
    auto* out = ::popen((command + " 2>&1").c_str(), "r");
    REQUIRE(out != nullptr);
    char buffer[4096];
    for (std::size_t n; (n = std::fread(buffer, 1, sizeof buffer, out)) > 0;)
        result.append(buffer, n);
    const auto code = ::pclose(out);
    INFO(command << "\n" << result);
    CHECK(code == 0);
    return result;
}

std::set<std::string> first_words(const std::string& text) {
    std::set<std::string> result;
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);)
        if (!line.empty()) result.insert(line.substr(0, line.find('\t')));
    return result;
}

std::string told(const folder& at, const std::vector<std::string>& arguments) {
    const auto r = run(arguments);
    CHECK(r.code == 0);
    return at.file("told", r.out);
}

using words = std::set<std::string>;
const words commands = {"check", "tidy",  "explain", "weigh",
                        "print", "label", "convert", "language-server"};
const words formats = {"text", "gcc", "json", "sarif"};

} // namespace

TEST_CASE("bash completes commands, options, their values and recipes", "[commands]") {
    const folder at;
    const auto file = told(at, {"--completion", "bash"});
    at.file("a.recipe", ""), at.file("b.txt", "");
    const auto completed = [&](const std::string& line, int word) {
        return first_words(from_shell("cd " + at.path() + " && bash --norc -c 'source " + file +
                                      "; COMP_WORDS=(" + line +
                                      "); COMP_CWORD=" + std::to_string(word) +
                                      "; _benchcard; printf \"%s\\n\" \"${COMPREPLY[@]}\"'"));
    };
    auto all = commands;
    all.insert({"-h", "--help", "--version"});
    CHECK(completed("benchcard \"\"", 1) == all);
    CHECK(completed("benchcard ti", 1) == words{"tidy"});
    CHECK(completed("benchcard tidy --", 2) == words{"--help", "--write", "--check"});
    CHECK(completed("benchcard check --format \"\"", 3) == formats);
    CHECK(completed("benchcard label --format \"\"", 3) == words{"text", "json"});
    CHECK(completed("benchcard explain salt-", 2) == words{"salt-high", "salt-low"});
    CHECK(completed("benchcard weigh \"\"", 2) == words{"a.recipe"});
    CHECK(completed("benchcard weigh --scale \"\"", 3).empty());
}

TEST_CASE("fish completes commands, options, their values and recipes", "[commands]") {
    const folder at;
    const auto file = told(at, {"--completion", "fish"});
    at.file("a.recipe", ""), at.file("b.txt", "");
    const auto completed = [&](const std::string& line) {
        return first_words(from_shell("cd " + at.path() + " && HOME=" + at.path() +
                                      " fish --no-config -c 'source " + file + "; complete -C \"" +
                                      line + "\"'"));
    };
    CHECK(completed("benchcard ") == commands);
    CHECK(completed("benchcard tidy --w") == words{"--write"});
    CHECK(completed("benchcard check --format ") == formats);
    CHECK(completed("benchcard explain salt-") == words{"salt-high", "salt-low"});
    CHECK(completed("benchcard weigh a") == words{"a.recipe"});
}

TEST_CASE("zsh reads its completion, with every command and option in it", "[commands]") {
    const folder at;
    const auto file = told(at, {"--completion", "zsh"});
    from_shell("zsh -f -n " + file);
    const auto text = bytes_of(file);
    CHECK(text.starts_with("#compdef benchcard\n"));
    for (const auto& command : commands) CHECK_THAT(text, Catch::Contains("'" + command + ":"));
    CHECK_THAT(text, Catch::Contains("'*--format[For other programs]: :(text gcc json sarif)'"));
    // The functions of zsh that read the specifications do so without complaint.
    const auto said = from_shell("cd " + at.path() +
                                 " && zsh -f -c '"
                                 "autoload -Uz compinit && compinit -D -u; "
                                 "_arguments() { print -rl -- \"$@\"; }; "
                                 "compdef() { :; }; "
                                 "state=rest; words=(check); source " +
                                 file + "'");
    CHECK_THAT(said, Catch::Contains("1: :->command"));
}

TEST_CASE("the manual page has every command and option, and roff takes it", "[commands]") {
    const folder at;
    const auto file = told(at, {"--manual"});
    CHECK(from_shell("groff -man -Tutf8 -ww -z " + file) == "");
    const auto page = from_shell("groff -man -Tutf8 -P -cbou " + file);
    for (const auto& command : commands) {
        CHECK_THAT(page, Catch::Contains("benchcard " + command));
        const auto help = run({command, "--help"}).out;
        for (std::size_t at_ = help.find("--"); at_ != help.npos; at_ = help.find("--", at_ + 2)) {
            const auto end = help.find_first_not_of("abcdefghijklmnopqrstuvwxyz-", at_);
            CHECK_THAT(page, Catch::Contains(help.substr(at_, end - at_)));
        }
    }
    CHECK_THAT(page, Catch::Contains("EXIT STATUS"));
}

TEST_CASE("no shell but those three", "[commands]") {
    CHECK(run({"--completion", "csh"}).code == 2);
    CHECK(run({"--completion", "csh"}).err ==
          "benchcard: there is no completion for `csh`; there is for: bash, zsh, fish\n");
}

} // namespace benchcard::program
