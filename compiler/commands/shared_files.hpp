#pragma once

#include "compiler/recipe/book.hpp"

#include <map>
#include <memory>
#include <mutex>
#include <string>

namespace benchcard::commands {

/// Files that many recipes use, each read once whatever the number of threads that ask for it.
class shared_files {
  public:
    explicit shared_files(recipe::file_reader read) : read_(std::move(read)) {}
    recipe::file_text operator()(const std::string& path);

  private:
    struct kept_file {
        std::once_flag once;
        recipe::file_text text;
    };
    recipe::file_reader read_;
    std::mutex mutex_;
    std::map<std::string, std::shared_ptr<kept_file>> files_;
};

} // namespace benchcard::commands
