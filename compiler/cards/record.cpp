#include "compiler/cards/record.hpp"

#include "compiler/cards/fingerprint.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

namespace benchcard::cards {

namespace {

using json = nlohmann::ordered_json;

constexpr int format_version = 1;

json as_object(const recorded& r) {
    return {
        {"fingerprint", r.fingerprint}, {"title", r.title}, {"order", r.order}, {"says", r.says}};
}

recorded from_object(const json& object) {
    return {object.at("fingerprint"), object.at("title"), object.at("order"), object.at("says")};
}

/// The lines of one list that another lacks; one that stands twice is taken twice.
std::vector<std::string> missing_from(std::vector<std::string> other,
                                      const std::vector<std::string>& lines) {
    std::vector<std::string> result;
    for (const auto& line : lines) {
        const auto found = std::find(other.begin(), other.end(), line);
        if (found == other.end())
            result.push_back(line);
        else
            other.erase(found);
    }
    return result;
}

} // namespace

recorded record_of(const styles::card& c, const std::vector<std::string>& order) {
    return {c.fingerprint, c.title, order, said_on(c)};
}

std::optional<std::vector<recorded>> read_record(std::string_view text) {
    try {
        const auto document = json::parse(text);
        if (document.at("benchcard record") != format_version) return std::nullopt;
        std::vector<recorded> result;
        for (const auto& object : document.at("cards")) result.push_back(from_object(object));
        return result;
    } catch (const json::exception&) {
        return std::nullopt;
    }
}

std::string written(const std::vector<recorded>& record) {
    json document = {{"benchcard record", format_version}, {"cards", json::array()}};
    for (const auto& r : record) document["cards"].push_back(as_object(r));
    return document.dump(1, ' ', false, json::error_handler_t::replace) + "\n";
}

void add_to(std::vector<recorded>& record, const std::vector<recorded>& printed) {
    for (const auto& p : printed) {
        const bool is_there = std::any_of(record.begin(), record.end(), [&](const auto& r) {
            return r.fingerprint == p.fingerprint;
        });
        if (!is_there) record.push_back(p);
    }
}

card_change change_between(const std::vector<std::string>& before,
                           const std::vector<std::string>& now) {
    return {missing_from(now, before), missing_from(before, now)};
}

} // namespace benchcard::cards
