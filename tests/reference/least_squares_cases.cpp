// least_squares_cases [CASES]: random problems of the kind that the nearest formula asks, with the answers of
// the engine, as JSON, one to a line. tests/compare_quadprog.mjs works them out anew with another program.
// Seeds are fixed.
#include <cstdio>
#include <cstdlib>

#include "engine/chance.h"
#include "engine/least_squares.h"

namespace {

// Fatty acids of some oils in shares of one, many of them nought; what is wished is a mix of some, or
// anything; a small row for each column, as the engine has it, so that there is one answer.
least_squares::Problem case_of(chance::Generator& chance) {
    least_squares::Problem problem;
    problem.columns = 2 + chance.below(14);
    problem.total = static_cast<double>(chance.between(1, 100));
    const std::size_t acids = 1 + chance.below(16);
    const bool reachable = chance.below(2) == 0;
    std::vector<double> mix(problem.columns, 0.0);
    double whole = 0;
    for (double& one : mix)
        whole += one = chance.below(2) == 0 ? 0 : chance.unit();
    for (std::size_t i = 0; i < acids; ++i) {
        double* row = problem.add_row(0);
        double reached = 0;
        for (std::size_t j = 0; j < problem.columns; ++j) {
            row[j] = chance.below(3) == 0 ? 0 : chance.unit();
            if (whole > 0) reached += row[j] * mix[j] / whole * problem.total;
        }
        problem.wanted.back() = reachable ? reached : chance.unit() * problem.total;
    }
    const double stays = chance.below(2) == 0 ? 1e-3 : 1;
    for (std::size_t j = 0; j < problem.columns; ++j)
        problem.add_row(stays * chance.unit() * problem.total)[j] = stays;
    return problem;
}

void print(const char* name, const std::vector<double>& values) {
    std::printf("\"%s\":[", name);
    for (std::size_t i = 0; i < values.size(); ++i)
        std::printf("%s%.17g", i > 0 ? "," : "", values[i]);
    std::printf("],");
}

}  // namespace

int main(int count, char** arguments) {
    const int cases = count > 1 ? std::atoi(arguments[1]) : 2000;
    chance::Generator chance(1974);
    for (int i = 0; i < cases; ++i) {
        const least_squares::Problem problem = case_of(chance);
        const least_squares::Answer answer = least_squares::nearest(problem);
        std::printf("{\"columns\":%zu,\"total\":%.17g,", problem.columns, problem.total);
        print("weights", problem.weights);
        print("wanted", problem.wanted);
        print("point", answer.point);
        std::printf("\"residual\":%.17g,\"settled\":%s}\n", answer.residual,
                    answer.settled ? "true" : "false");
    }
    return 0;
}
