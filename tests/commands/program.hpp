#pragma once

#include <map>
#include <string>
#include <vector>

/// The built program, run as a person would run it.
namespace benchcard::program {

/// What came of one run.
struct outcome {
    int code = -1; ///< the exit code; -1 when it was ended by a signal, or ran longer than 40 s
    std::string out, err;
};

/// How a run differs from one at a shell with nothing redirected.
struct surroundings {
    std::string input = {};  ///< on standard input
    std::string folder = {}; ///< the current folder
    std::string out_to = {}; ///< a file or device for standard output
    std::string err_to = {}; ///< a file or device for standard error
    bool out_closed = false;
    long largest_file = -1; ///< the size a file it writes may have, in bytes, as on a full disk
    long most_memory = -1;  ///< the addresses it may have, in bytes; not where they are sanitized
    bool as_nobody = false; ///< without the rights of root, where the tests have them
    std::map<std::string, std::string> environment = {}; ///< set besides what there is
};

/// Runs the program with these arguments and waits for its end.
outcome run(const std::vector<std::string>& arguments, const surroundings& where = {});

/// Runs it with all three streams on a terminal, and gives what the terminal shows.
std::string run_on_terminal(const std::vector<std::string>& arguments,
                            const std::map<std::string, std::string>& environment = {});

/// A folder for one test, gone at its end.
class folder {
  public:
    folder();
    ~folder();
    folder(const folder&) = delete;
    folder& operator=(const folder&) = delete;

    const std::string& path() const { return path_; }
    std::string operator/(const std::string& name) const { return path_ + "/" + name; }
    /// Writes a file, and gives its path.
    std::string file(const std::string& name, const std::string& text) const;
    /// The names in it, in order.
    std::vector<std::string> names() const;

  private:
    std::string path_;
};

/// A run that goes on beside the test, and is ended with it. What it says on standard error is
/// kept.
class background {
  public:
    background(const std::vector<std::string>& arguments, const surroundings& where);
    ~background();
    background(const background&) = delete;
    background& operator=(const background&) = delete;

    bool is_running();
    /// Sends it a signal, and waits for its end.
    void end_with(int signal);
    /// What it has said once it holds some words so many times; all there is after 40 s.
    std::string wait_for(const std::string& words, std::size_t times = 1);

  private:
    folder streams_;
    int child_ = -1;
};

/// A file's bytes; empty when there is none.
std::string bytes_of(const std::string& path);

/// A recipe that has nothing to be said against it: two tarts of 150 g.
extern const std::string tart;

} // namespace benchcard::program
