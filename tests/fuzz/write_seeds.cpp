#include "seeds.hpp"

#include <filesystem>
#include <fstream>

namespace fs = std::filesystem;

namespace {

void write(const fs::path& path, const std::string& bytes) {
    fs::create_directories(path.parent_path());
    std::ofstream(path, std::ios::binary) << bytes;
}

} // namespace

/// Writes what the targets begin with into a folder: TARGET/NAME, and words.dict.
int main(int argc, char** argv) {
    if (argc != 2) return 2;
    const fs::path folder = argv[1];
    using namespace benchcard::fuzz;
    write(folder / "words.dict", dictionary());
    for (const auto& target : targets()) {
        for (const auto& s : seeds_for(target)) write(folder / target / s.name, s.bytes);
        for (const auto& s : found_for(target))
            write(folder / target / ("found-" + s.name), s.bytes);
    }
}
