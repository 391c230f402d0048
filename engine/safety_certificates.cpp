// What only the paper of a raw material can say. Annex III of the EU sets a peroxide value for oils of some
// plants and for some constituents; the row notes say that it holds for the substance and not for the
// finished product, so it is never checked here: the report names the paper to ask for. Of constituents, an
// oil counts that may hold a tenth and more of one; that tenth is our estimate. The rows are read as CosIng
// prints them (export of May 2024); of the plant rows the genus is looked at.
#include <array>

#include "limits_book.h"
#include "safety_family.h"

namespace safety {
namespace {

using finding::Code;
using finding::Severity;
using quantity::Percent;

constexpr std::string_view kSource = "cosing_iii_2024";  // in the book of limits
constexpr std::string_view kEdition = "Regulation (EC) 1223/2009, Annex III, CosIng export of May 2024";

struct TableRow {
    std::string_view of, id;  // beginning of the plant's name, or a constituent
    std::int64_t below;       // mmol/L
};
constexpr std::array<TableRow, 6> kPlants = {{
    {"Abies ", "III/103-107", 10},
    {"Pinus ", "III/108-117", 10},
    {"Picea mariana", "III/118", 10},
    {"Thuja occidentalis", "III/119", 10},
    {"Cedrus atlantica", "III/122", 10},
    {"Cupressus sempervirens", "III/123", 10},
}};
constexpr std::array<TableRow, 7> kConstituents = {{
    {"alpha_terpinene", "III/131", 10},
    {"gamma_terpinene", "III/132", 10},
    {"terpinolene", "III/133", 10},
    {"carene", "III/121", 10},
    {"alpha_pinene", "III/371", 10},
    {"beta_pinene", "III/371", 10},
    {"limonene", "III/88", 20},
}};
constexpr Percent kWorthAsking{10 * decimal::kOne};

const TableRow* row_of_plant(const catalogue::Ingredient& one) {
    for (const TableRow& row : kPlants)
        if (one.botanical.rfind(row.of, 0) == 0) return &row;
    return nullptr;
}

const TableRow* row_of_constituent(const composition::Table& table, const composition::Carrier& carrier) {
    for (const TableRow& row : kConstituents) {
        const composition::Id id = composition::find(table, row.of);
        for (const composition::Row& held : carrier.rows)
            if (held.constituent == id && held.percent.max && *held.percent.max >= kWorthAsking) return &row;
    }
    return nullptr;
}

}  // namespace

void certificates(const Case& the, Report& report) {
    std::vector<std::string> asked, unknown;
    for (const Portion& portion : the.portions) {
        if (portion.known == nullptr || portion.percent == Percent{0}) continue;
        if (portion.known->role != "essential_oil" && portion.known->role != "extract") continue;
        const TableRow* row = row_of_plant(*portion.known);
        const composition::Carrier* carrier =
            the.book == nullptr ? nullptr
                                : composition::find_carrier(the.book->composition, portion.known->id);
        if (row == nullptr && carrier != nullptr) row = row_of_constituent(the.book->composition, *carrier);
        if (row == nullptr) {
            if (carrier == nullptr) add_once(unknown, subject(portion));
            continue;
        }
        const std::size_t before = asked.size();
        add_once(asked, subject(portion));
        if (asked.size() == before) continue;
        auto told =
            measured(about(Code::certificate_peroxide, Severity::note, portion.line, subject(portion)), 0,
                     row->below * decimal::kOne, "mmol/L");
        told.value.reset();
        told.rule = row->id;
        told.edition = kEdition;
        report.findings.push_back(sourced(std::move(told), kSource, source::Standing::document));
    }
    if (!unknown.empty()) not_made(report, Rule::peroxide, Reason::no_figure, std::move(unknown));
    if (asked.empty()) return made(report, Rule::peroxide);
    not_made(report, Rule::peroxide, Reason::certificate_unsaid, std::move(asked));
}

}  // namespace safety
