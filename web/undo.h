// Steps back and forth over one value: a ring of whole copies. A new step begins when the value has been
// still for a second, so that typing "12.5" is one step, or when the caller says a deed is done.
#pragma once

#include <cstddef>
#include <deque>
#include <utility>

template <class T>
class Undo {
  public:
    static constexpr double kStillMs = 1000;
    static constexpr std::size_t kMost = 200;

    void start(const T& value) {
        past_.clear();
        future_.clear();
        present_ = value;
        changed_ms_ = -kStillMs;
    }

    // Call whenever the value may have changed.
    void feed(const T& value, double now_ms) {
        if (value == present_) return;
        if (now_ms - changed_ms_ >= kStillMs || past_.empty()) {
            past_.push_back(present_);
            if (past_.size() > kMost) past_.pop_front();
        }
        future_.clear();
        present_ = value;
        changed_ms_ = now_ms;
    }
    void deed_done() { changed_ms_ = -kStillMs; }  // what comes next is a step of its own

    bool can_back() const { return !past_.empty(); }
    bool can_forth() const { return !future_.empty(); }
    const T& back() {
        future_.push_back(std::exchange(present_, past_.back()));
        past_.pop_back();
        deed_done();
        return present_;
    }
    const T& forth() {
        past_.push_back(std::exchange(present_, future_.back()));
        future_.pop_back();
        deed_done();
        return present_;
    }

  private:
    std::deque<T> past_, future_;
    T present_{};
    double changed_ms_ = -kStillMs;
};
