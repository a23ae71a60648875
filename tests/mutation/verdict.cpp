#include "verdict.hpp"

#include "compiler/commands/files.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <sstream>
#include <stdexcept>

namespace benchcard::mutation {

namespace {

using grammar::span;
using sort = mutant::sort;

const std::string project = BENCHCARD_SOURCE_DIR "/";

std::string text_of_file(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    std::stringstream text;
    text << file.rdbuf();
    return text.str();
}

/// What is used is read once.
recipe::file_text read_once(const std::string& path) {
    static std::map<std::string, recipe::file_text> known;
    const auto found = known.find(path);
    if (found != known.end()) return found->second;
    return known.emplace(path, commands::read_file(project + path)).first->second;
}

/// Compiles a text as if it stood in a file of the project, which it may use others of.
std::unique_ptr<commands::compiled> compiled_as(const std::string& path, const std::string& text) {
    return commands::compile_text(path, text, measures::system::unstated, read_once);
}

bool overlap(span a, span b) {
    const auto end = [](span s) { return std::max(s.end, s.begin + 1); };
    return a.file == b.file && a.begin < end(b) && b.begin < end(a);
}

/// The lines of the text that a span stands in.
span whole_lines(const grammar::source& text, span where) {
    const auto last = text.at(where.end).line;
    return {0, static_cast<std::uint32_t>(text.line_start(text.at(where.begin).line)),
            static_cast<std::uint32_t>(text.line_start(last) + text.line(last).size() + 1)};
}

class judge_of_one {
  public:
    judge_of_one(const correct_recipe& r, const mutant& m)
        : m_(m), before_(*r.compiled),
          now_(compiled_as(r.path, changed(before_.files.sources[0].text(), m.change))) {}

    verdict run() {
        verdict result;
        weigh(result);
        const auto places = right_places();
        bool is_said = false;
        for (const auto& message : now_->messages) {
            if (!is_new(message)) continue;
            is_said = true;
            result.is_caught = result.is_caught || is_at(message, places);
        }
        if (!result.is_caught)
            result.why_missed = is_said ? "said, but at another place" : reason(result);
        return result;
    }

  private:
    const mutant& m_;
    const commands::compiled& before_;
    std::unique_ptr<commands::compiled> now_;

    bool is_new(const grammar::diagnostic& message) const {
        return std::none_of(before_.messages.begin(), before_.messages.end(), [&](const auto& old) {
            return old.kind == message.kind && old.message == message.message;
        });
    }

    static bool is_at(const grammar::diagnostic& message, const std::vector<span>& places) {
        return std::any_of(places.begin(), places.end(), [&](span place) {
            return overlap(message.where, place) ||
                   std::any_of(message.notes.begin(), message.notes.end(),
                               [&](const auto& n) { return n.where && overlap(*n.where, place); });
        });
    }

    /// The component that a block is; the product for the head of a recipe of components.
    const recipe::component* component_in(const commands::compiled& c) const {
        if (!c.meaning.has_product) return nullptr;
        const auto& blocks = c.files.trees[0].blocks;
        if (m_.block >= blocks.size()) return nullptr;
        for (const auto& one : c.meaning.components)
            if (one.written == &blocks[m_.block]) return &one;
        return &c.meaning.product();
    }

    static const recipe::line* line_at(const recipe::component* c, std::uint32_t begin) {
        if (!c) return nullptr;
        for (const auto& l : c->lines)
            if (l.where.file == 0 && l.where.begin == begin) return &l;
        return nullptr;
    }

    static std::optional<exact> used(const std::optional<recipe::spread>& grams) {
        return grams ? std::optional(grams->used) : std::nullopt;
    }

    void weigh(verdict& to) const {
        const auto* old_one = component_in(before_);
        const auto* new_one = component_in(*now_);
        if (m_.is == sort::yield) {
            if (old_one) to.before = used(old_one->made.grams);
            if (new_one) to.after = used(new_one->made.grams);
            return;
        }
        if (m_.is != sort::amount && m_.is != sort::removal) return;
        if (const auto* l = line_at(old_one, m_.of.begin)) to.before = used(l->grams);
        if (m_.is == sort::removal)
            to.after = exact(0);
        else if (const auto* l = line_at(new_one, m_.of.begin))
            to.after = used(l->grams);
    }

    /// The changed line. Where a line is gone, all of its component and of those that use it;
    /// where more or less is said to be made, also the lines that use it.
    std::vector<span> right_places() const {
        const auto& text = now_->files.sources[0];
        std::vector<span> result;
        const auto* c = component_in(*now_);
        if (m_.is == sort::removal) {
            add_block(m_.block, result);
            if (c) result.push_back(c->makes_where);
        } else {
            const auto begin = m_.change.where.begin;
            const auto end = begin + static_cast<std::uint32_t>(m_.change.text.size());
            result.push_back(whole_lines(text, {0, begin, end}));
        }
        const bool users_count = m_.is == sort::removal || m_.is == sort::yield;
        if (!c || !users_count) return result;
        const auto& all = now_->meaning.components;
        const auto index = static_cast<std::size_t>(c - all.data());
        for (const auto& user : all)
            for (const auto& l : user.lines) {
                if (l.component != index) continue;
                if (m_.is == sort::yield) result.push_back(l.where);
                if (m_.is == sort::removal) add_block_of(user, result);
            }
        return result;
    }

    void add_block(std::size_t index, std::vector<span>& to) const {
        const auto& blocks = now_->files.trees[0].blocks;
        if (index >= blocks.size()) return;
        const auto end = index + 1 < blocks.size()
                             ? blocks[index + 1].where.begin
                             : static_cast<std::uint32_t>(now_->files.sources[0].text().size());
        to.push_back({0, blocks[index].where.begin, end});
    }

    void add_block_of(const recipe::component& c, std::vector<span>& to) const {
        const auto& blocks = now_->files.trees[0].blocks;
        for (std::size_t i = 0; i < blocks.size(); ++i)
            if (c.written == &blocks[i]) add_block(i, to);
    }

    std::string reason(const verdict& v) const {
        if (m_.is == sort::reference) return "the block has a line of that name";
        if (m_.is == sort::heat) return "a heat that may be meant";
        const auto* c = component_in(before_);
        const bool is_stated =
            c && c->makes && ((c->makes->each && c->makes->count) || c->makes->whole);
        if (m_.is == sort::yield || !is_stated) return "what is made is not stated by weight";
        if (!v.before || !v.after || !c->mix) return "of unknown weight";
        const exact more = *v.after - *v.before;
        const exact share = (more < 0 ? exact(-more) : more) * c->times / c->mix->used;
        if (share <= exact(4, 100)) return "a small part of the mix, no rule for this ingredient";
        if (c->ready->low < c->ready->high) return "within what the measures may hold";
        return "the mix still adds up";
    }
};

} // namespace

std::vector<correct_recipe> correct_recipes() {
    std::vector<std::string> paths;
    for (const auto* folder : {"tests/recipes", "examples"})
        for (const auto& file : std::filesystem::recursive_directory_iterator(project + folder))
            if (file.path().extension() == ".recipe")
                paths.push_back(std::filesystem::relative(file.path(), project).string());
    std::sort(paths.begin(), paths.end());
    std::vector<correct_recipe> result;
    for (const auto& path : paths) result.push_back(recipe_of(path, text_of_file(project + path)));
    return result;
}

correct_recipe recipe_of(std::string path, std::string text) {
    auto compiled = compiled_as(path, text);
    return {std::move(path), std::move(text), std::move(compiled)};
}

std::vector<mutant> mutants_of(const correct_recipe& r) {
    std::set<std::uint32_t> uses;
    for (const auto& c : r.compiled->meaning.components)
        for (const auto& l : c.lines)
            if (l.component && l.where.file == 0) uses.insert(l.where.begin);
    return mutants_of(r.compiled->files.sources[0], r.compiled->files.trees[0], uses);
}

bool verdict::changes_weight() const {
    if (!before || *before == 0) return false;
    if (!after) return true;
    const exact more = *after - *before;
    return (more < 0 ? exact(-more) : more) * 5 > *before;
}

verdict judge(const correct_recipe& r, const mutant& m) { return judge_of_one(r, m).run(); }

} // namespace benchcard::mutation
