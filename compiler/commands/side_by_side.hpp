#pragma once

#include <algorithm>
#include <condition_variable>
#include <cstddef>
#include <exception>
#include <functional>
#include <mutex>
#include <optional>
#include <thread>
#include <vector>

namespace benchcard::commands {

/// The threads that do some work when so many are asked for; 0 is one a core.
inline std::size_t threads_for(std::size_t asked, std::size_t work) {
    const std::size_t cores = std::max(1u, std::thread::hardware_concurrency());
    return std::max<std::size_t>(1, std::min(asked == 0 ? cores : asked, work));
}

/// Does a piece of work for each number below `count` on several threads, and gives the results in
/// order to whoever takes them; not many more are kept than there are threads. Who takes them is
/// one of the threads: it works until what it wants is there. What a piece of work throws comes out
/// of `take` at its turn.
template <typename Result> class side_by_side {
  public:
    side_by_side(std::size_t count, std::size_t threads, std::function<Result(std::size_t)> work)
        : work_(std::move(work)), count_(count), kept_(threads * 16) {
        for (std::size_t i = 1; i < threads; ++i) try {
                threads_.emplace_back([this] { run(); });
            } catch (const std::exception&) {
                break; // as many as the system gives
            }
    }
    ~side_by_side() {
        {
            const std::lock_guard lock(mutex_);
            next_ = count_; // what nobody will take is not begun
            is_over_ = true;
        }
        has_room_.notify_all();
        threads_.clear(); // joins
    }
    side_by_side(const side_by_side&) = delete;
    side_by_side& operator=(const side_by_side&) = delete;

    /// The result of the next number, once it is there.
    Result take() {
        std::unique_lock lock(mutex_);
        auto& slot = kept_[taken_ % kept_.size()];
        while (!slot.is_there)
            if (has_more())
                do_next(lock);
            else
                is_there_.wait(lock);
        auto taken = std::move(slot);
        slot = {};
        ++taken_;
        lock.unlock();
        has_room_.notify_all();
        if (taken.failure) std::rethrow_exception(taken.failure);
        return std::move(*taken.result);
    }

  private:
    struct kept {
        bool is_there = false;
        std::optional<Result> result;
        std::exception_ptr failure;
    };

    std::function<Result(std::size_t)> work_;
    std::mutex mutex_;
    std::condition_variable is_there_, has_room_;
    std::size_t count_, next_ = 0, taken_ = 0;
    bool is_over_ = false;
    std::vector<kept> kept_;
    std::vector<std::jthread> threads_;

    /// Whether there is work that may be begun.
    bool has_more() const { return next_ < std::min(count_, taken_ + kept_.size()); }

    void run() {
        std::unique_lock lock(mutex_);
        while (true) {
            has_room_.wait(lock, [&] { return is_over_ || next_ >= count_ || has_more(); });
            if (next_ >= count_) return;
            do_next(lock);
            is_there_.notify_one();
        }
    }

    /// Is called, and ends, with the lock held; not while it works.
    void do_next(std::unique_lock<std::mutex>& lock) {
        const auto mine = next_++;
        lock.unlock();
        kept made;
        try {
            made.result.emplace(work_(mine));
        } catch (...) {
            made.failure = std::current_exception();
        }
        made.is_there = true;
        lock.lock();
        kept_[mine % kept_.size()] = std::move(made);
    }
};

} // namespace benchcard::commands
