// When nothing fits: a smallest set of what the person says that cannot all be true beside the list itself,
// then what of the list it collides with; and for each figure of the set how far it alone would have to give
// way for everything to fit. Small sets are looked for first; a set of three or more is one of which nothing
// can be left out, though another might be smaller.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

#include "reading_rows.h"

namespace reading {

// One thing that is claimed: by a statement (one side of it), by where the 1 % line is said to fall, or by
// the list: its order, its sum, what stands above and below the line.
struct Said {
    enum class What { statement, line, total, order, above, below };
    What what = What::statement;
    std::size_t at = 0;    // statement; item (order: the earlier of two)
    bool at_most = false;  // of a statement
    bool operator==(const Said&) const = default;
};

struct Mend {  // of one of the set: this change alone, and everything fits
    Said said;
    std::int64_t figure = 0;  // a most that is raised to this at least, a least lowered to this at most; or
                              // where the line would have to stand
    double by = 0;            // how far that is from what is said, in shares of it
    bool operator==(const Mend&) const = default;
};

struct Conflict {
    std::vector<Said> said;    // of the person; with one of them gone the rest could be true
    std::vector<Said> beside;  // of the list; empty where it is not told apart (the line may be anywhere)
    std::vector<Mend> mends;   // the smallest change first; none: more than one thing has to change
    bool operator==(const Conflict&) const = default;
};

class ConflictWork {
  public:
    explicit ConflictWork(const Problem& problem);  // of one that nothing fits
    bool work(std::size_t searches);
    double progress() const;
    const Conflict& conflict() const { return conflict_; }  // when done

  private:
    enum class Stage { few, filter, list, mend, done };
    using Set = std::vector<bool>;  // of all_
    bool ask(const Set& set);       // one place of the line; whether the answer is known
    bool next_few();
    void step_filter();
    void step_list();
    void step_mend();
    void start_list();
    void finish();

    const Problem problem_;
    std::vector<Said> all_;
    std::vector<std::size_t> line_places_, every_place_;
    Stage stage_ = Stage::filter;
    Set set_, asked_;
    std::size_t at_ = 0, place_ = 0, size_ = 0, first_ = 0, second_ = 0;
    bool fits_ = false, any_ = false;
    double best_ = 0;
    std::vector<Row> rows_;
    std::vector<std::size_t> of_row_;  // which of all_ a row belongs to
    Natural natural_;
    Set list_;
    Conflict conflict_;
};

}  // namespace reading
