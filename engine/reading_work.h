// A reading worked out from its question to its answers, in slices, so that no frame waits: bounds first,
// then why nothing fits, or what is likely, what each statement bought, and suggestions. What is there
// already can be shown while the rest goes on. It holds all it needs and may be dropped at any time; the same
// question and seed give the same answer in every build, whatever the slices.
#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <vector>

#include "reading_bounds.h"
#include "reading_conflict.h"
#include "reading_sample.h"
#include "reading_suggest.h"

namespace reading {

struct Wish {
    std::size_t draws = 4000, suggestions = 5;
    std::uint64_t seed = 7;
    bool gains = true;
    bool operator==(const Wish&) const = default;
};
inline constexpr std::size_t kMostDraws = 100'000;
inline constexpr std::size_t kMostSuggestions = 20;

enum class State {
    asked,         // not known yet
    fits,          // something fits
    nothing_fits,  // nothing does; the conflict says why
    unknown,       // the figures are beyond this arithmetic
};

struct Place {  // where the 1 % line may fall
    std::size_t after = 0;
    double share = 0;  // of everything that fits, by volume as the draws found it
    bool operator==(const Place&) const = default;
};

struct Gain {  // of one statement, or of saying where the line falls: the bounds with and without it
    Said said;
    std::vector<Range> without;  // of the items
    std::size_t item = 0;        // the one that it narrows most …
    double narrower = 0;         // … by so many points
    bool operator==(const Gain&) const = default;
};

struct Answer {
    State state = State::asked;
    std::vector<Range> items;       // the least and the most of each
    std::vector<Range> statements;  // of each statement's sum: a group's share; zeros of one that is off
    std::vector<Place> places;
    std::vector<Likely> likely;  // of each item; empty until it is known
    Method method = Method::none;
    bool settled = true, partial = false;  // as in SampleWork
    std::size_t attempts = 0, steps = 0;   // likewise
    std::vector<Gain> gains;
    std::vector<Suggestion> suggestions;
    Conflict conflict;
    bool operator==(const Answer&) const = default;
};

class Work {
  public:
    Work(Problem problem, Wish wish);  // a problem that is `checked`
    Work(Work&&) = delete;             // its parts look at each other
    // A slice is small: about a tenth of a millisecond at a few dozen ingredients. Whether there is more to
    // do.
    bool work(std::size_t slices = 1);
    double progress() const;  // 0 to 1, never back
    const Answer& answer() const { return answer_; }
    const Problem& problem() const { return problem_; }

  private:
    enum class Stage { bounds, conflict, sample, gains, suggestions, done };
    void step();
    void end_bounds();
    void end_sample();
    void step_gains();

    const Problem problem_;
    const Wish wish_;
    const std::vector<Row> rows_;
    Stage stage_ = Stage::bounds;
    Answer answer_;
    BoundsWork bounds_;
    std::unique_ptr<ConflictWork> conflict_;
    std::unique_ptr<SampleWork> sample_;
    std::unique_ptr<BoundsWork> without_;
    std::unique_ptr<SuggestWork> suggest_;
    std::size_t gain_ = 0;  // statement; after the last of them the line
};

// All at once, for a command line.
Answer answer(const Problem& problem, const Wish& wish);

}  // namespace reading
