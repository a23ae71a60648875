# Writes a C++ source that holds some text files by name, in the order given.
# Called as: cmake -DOUTPUT=… -DNAMESPACE=… -DFUNCTION=… "-DFILES=a;b" -P embed.cmake
set(entries "")
foreach(path IN LISTS FILES)
    get_filename_component(name "${path}" NAME)
    file(READ "${path}" hex HEX)
    string(LENGTH "${hex}" digits)
    math(EXPR size "${digits} / 2")
    set(literal "")
    set(from 0)
    while(from LESS digits)
        string(SUBSTRING "${hex}" ${from} 64 piece)
        string(REGEX REPLACE "(..)" "\\\\x\\1" piece "${piece}")
        string(APPEND literal "         \"${piece}\"\n")
        math(EXPR from "${from} + 64")
    endwhile()
    string(APPEND entries "        {\"${name}\", std::string_view(\n         \"\"\n${literal}         , ${size})},\n")
endforeach()
file(WRITE "${OUTPUT}" "// Made by embed.cmake.
#include <string_view>
#include <utility>
#include <vector>

namespace ${NAMESPACE} {

const std::vector<std::pair<std::string_view, std::string_view>>& ${FUNCTION}();
const std::vector<std::pair<std::string_view, std::string_view>>& ${FUNCTION}() {
    static const std::vector<std::pair<std::string_view, std::string_view>> files = {
${entries}    };
    return files;
}

} // namespace ${NAMESPACE}
")
