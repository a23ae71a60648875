#include "compiler/commands/shared_files.hpp"

namespace benchcard::commands {

recipe::file_text shared_files::operator()(const std::string& path) {
    std::shared_ptr<kept_file> file;
    {
        const std::lock_guard lock(mutex_);
        auto& kept = files_[path];
        if (!kept) kept = std::make_shared<kept_file>();
        file = kept;
    }
    std::call_once(file->once, [&] { file->text = read_(path); });
    return file->text;
}

} // namespace benchcard::commands
