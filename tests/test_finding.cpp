// The sentence of a remark.
#include "doctest/doctest.h"
#include "engine/finding.h"

namespace test_finding {

TEST_CASE("a remark says its subject and figures in the words of the table") {
    words::Table table;
    table.entries["finding.usual_range_left"] = {
        "{subject} is at {value} {unit}; usual ends at {limit} {unit}.", ""};
    finding::Finding finding;
    finding.code = finding::Code::usual_range_left;
    finding.subject = "shea";
    finding.value = 925000;
    finding.limit = 900000;
    finding.unit = "%";
    CHECK(finding::say(table, finding, "Shea butter") == "Shea butter is at 92.5 %; usual ends at 90 %.");
    table.sign = decimal::Sign::comma;
    CHECK(finding::say(table, finding, "Shea butter") == "Shea butter is at 92,5 %; usual ends at 90 %.");
}

TEST_CASE("a figure that a remark does not have is left empty") {
    words::Table table;
    table.entries["finding.formula_empty"] = {"[{value}{limit}]", ""};
    finding::Finding finding;
    finding.code = finding::Code::formula_empty;
    CHECK(finding::say(table, finding, "") == "[]");
}

TEST_CASE("what is less than nothing stands behind a minus, not behind a hyphen") {
    words::Table table;
    table.entries["finding.rest_negative"] = {"The other lines leave {value} %.", ""};
    finding::Finding finding;
    finding.code = finding::Code::rest_negative;
    finding.value = -54000;
    CHECK(finding::say(table, finding, "") ==
          "The other lines leave \xE2\x88\x92"
          "5.4 %.");
}

TEST_CASE("severities are named and ordered") {
    CHECK(finding::severity_name(finding::Severity::stop) == "stop");
    CHECK(finding::severity_name(finding::Severity::caution) == "caution");
    CHECK(finding::severity_name(finding::Severity::note) == "note");
    CHECK(finding::Severity::stop > finding::Severity::caution);
    CHECK(finding::Severity::caution > finding::Severity::note);
}

}  // namespace test_finding
