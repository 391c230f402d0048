// The families of rules and the few things that each of them does. A family takes the Case and adds to the
// Report what it found, which checks it made and which it could not make. It names in Made what it looked at
// (nothing: nothing of the kind is in the product), so that silence is told apart from absence.
#pragma once

#include "safety.h"

namespace safety {

void sums(const Case& the, Report& report);          // sum, empty, double, unknown
void usual(const Case& the, Report& report);         // what is usual of an ingredient, of a role
void preservation(const Case& the, Report& report);  // water, what lets it in, preservatives
void preservatives(const Case& the, Report& report);
void emulsion(const Case& the, Report& report);
void powder(const Case& the, Report& report);
void antioxidant(const Case& the, Report& report);
void heat(const Case& the, Report& report);  // what it spoils, what must melt, what may catch fire
void origin(const Case& the, Report& report);
void claims(const Case& the, Report& report);  // words of a medicine, of protection from the sun
void colours(const Case& the, Report& report);
void scents(const Case& the, Report& report);        // bought ones, by their certificate
void certificates(const Case& the, Report& report);  // what only a paper of the raw material can say
// Constituents, whole oils, levels, persons, the sun, allergens: what safety_bounds.h holds against the book.
void limited(const Case& the, Report& report);

void usual_of_ingredients(const Case& the, Report& report);  // of usual, the part for each line

// ---- what water does, shared by the families that ask ----
bool holds_water(const catalogue::Ingredient& ingredient);
quantity::Percent water_in(const Case& the);
void water(const Case& the, Report& report);  // the part of preservation that needs no table

// ---- small things ----
// Whether the law of this market is to be looked at: the market said; where none is said, each of them.
bool under_law_of(const Case& the, std::string_view market);
std::string subject(const Portion& portion);  // id, or name
std::string subject(const Case& the, std::size_t line);
const formula::Phase* phase_of(const Case& the, std::size_t line);
void add_once(std::vector<std::string>& list, std::string subject);
// Small letters (ASCII), what is no letter or digit as one space, a space at both ends: " rose water ".
std::string spaced(std::string_view text);

finding::Finding about(finding::Code code, finding::Severity severity, std::optional<std::size_t> line,
                       std::string subject);
finding::Finding measured(finding::Finding finding, std::int64_t value, std::optional<std::int64_t> limit,
                          std::string unit);
finding::Finding sourced(finding::Finding finding, std::string_view source, source::Standing standing);
void sort(std::vector<finding::Finding>& findings);

void made(Report& report, Rule rule, std::vector<std::string> looked_at = {});
void not_made(Report& report, Rule rule, Reason reason, std::vector<std::string> about = {});
inline constexpr std::string_view kCommonPractice = "common_practice";  // keys in presets/sources.json
inline constexpr std::string_view kMemory = "memory";

}  // namespace safety
