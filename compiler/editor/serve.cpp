#include "compiler/editor/serve.hpp"

#include "compiler/editor/messages.hpp"

#include <cerrno>
#include <condition_variable>
#include <deque>
#include <memory>
#include <mutex>
#include <thread>
#include <unistd.h>

namespace benchcard::editor {

namespace {

/// What the reader has read and the worker has not taken; and which requests were taken back.
class queue {
  public:
    struct entry {
        json message;
        bool is_readable = true;
    };

    void put(entry e) {
        const std::lock_guard lock(mutex_);
        if (const auto id = id_of(e.message); !id.is_null()) pending_.insert(id.dump());
        waiting_.push_back(std::move(e));
        changed_.notify_one();
    }

    void end() {
        const std::lock_guard lock(mutex_);
        ended_ = true;
        changed_.notify_one();
    }

    /// Only what is still to be answered can be taken back.
    void cancel(const json& id) {
        const std::lock_guard lock(mutex_);
        if (pending_.contains(id.dump())) cancelled_.insert(id.dump());
    }

    bool is_cancelled(const json& message) {
        const std::lock_guard lock(mutex_);
        return cancelled_.contains(id_of(message).dump());
    }

    void answered(const json& message) {
        const std::lock_guard lock(mutex_);
        pending_.erase(id_of(message).dump());
        cancelled_.erase(id_of(message).dump());
    }

    bool is_empty() {
        const std::lock_guard lock(mutex_);
        return waiting_.empty();
    }

    /// Waits for the next; nothing when the stream has ended and all are taken.
    std::optional<entry> take() {
        std::unique_lock lock(mutex_);
        changed_.wait(lock, [this] { return ended_ || !waiting_.empty(); });
        if (waiting_.empty()) return std::nullopt;
        auto result = std::move(waiting_.front());
        waiting_.pop_front();
        return result;
    }

  private:
    std::mutex mutex_;
    std::condition_variable changed_;
    std::deque<entry> waiting_;
    std::set<std::string> pending_, cancelled_;
    bool ended_ = false;

    static json id_of(const json& message) {
        return message.is_object() && message.contains("method") ? message.value("id", json())
                                                                 : json();
    }
};

void read_all(int from, queue& to) {
    message_reader reader(from);
    while (const auto body = reader.next()) {
        auto message = message_in(*body);
        const bool is_readable = message.has_value();
        queue::entry e{is_readable ? std::move(*message) : json(), is_readable};
        if (e.is_readable && e.message.is_object() &&
            e.message.value("method", json()) == "$/cancelRequest" &&
            e.message.contains("params") && e.message["params"].is_object())
            to.cancel(e.message["params"].value("id", json()));
        else
            to.put(std::move(e));
    }
    to.end();
}

bool write_all(int to, std::string_view bytes) {
    while (!bytes.empty()) {
        const auto count = ::write(to, bytes.data(), bytes.size());
        if (count < 0 && errno == EINTR) continue;
        if (count <= 0) return false;
        bytes.remove_prefix(static_cast<std::size_t>(count));
    }
    return true;
}

} // namespace

int serve(int from, int to, surroundings outside) {
    bool can_write = true;
    server s(std::move(outside), [&](const json& message) {
        const auto body = message.dump(-1, ' ', false, json::error_handler_t::replace);
        can_write = can_write && write_all(to, framed(body));
    });
    // The reader may wait for more that never comes, longer than this: what they share is theirs
    // both.
    const auto shared = std::make_shared<queue>();
    auto& waiting = *shared;
    std::thread([from, shared] { read_all(from, *shared); }).detach();
    while (!s.is_over() && can_write) {
        if (waiting.is_empty()) s.rest();
        const auto e = waiting.take();
        if (!e) break;
        if (e->is_readable)
            s.take(e->message, [&] { return waiting.is_cancelled(e->message); });
        else
            s.refuse_unreadable();
        waiting.answered(e->message);
    }
    return can_write ? s.exit_code() : 1;
}

} // namespace benchcard::editor
