// SPDX-License-Identifier: GPL-3.0-or-later
// bench_psplib DIR [--schedules N] [--seed N] [--set NAME]
//
// Plans the instances that DIR/best-known.tsv lists, and prints a row for each and a summary for
// each set. One schedule is one pass that gives every activity a start, each of the two passes of a
// double justification counted, as R. Kolisch and S. Hartmann compare methods (European Journal of
// Operational Research 174 (2006) 23-37). A plan that breaks a rule ends the program with 1.
#include "core/plan/level_search.h"
#include "core/plan/levelling.h"
#include "tests/bench/psplib/sm_file.h"
#include "tests/support/level_check.h"

#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <ctime>
#include <fstream>
#include <iomanip>
#include <iostream>
#include <map>
#include <optional>
#include <sstream>
#include <string>
#include <vector>

namespace ohmwright::plan::psplib {
namespace {

struct Question
{
    std::string set, file;
    int criticalPath = 0, lowerBound = 0, bestKnown = 0;
};

struct Summary
{
    int instances = 0, equal = 0, worse = 0;
    double deviation = 0, overCriticalPath = 0; // sums, %
    std::int64_t schedules = 0;
    double seconds = 0;
};

// set, parameter, replicate, file, activities, resources, critical path, lower bound, best known, …
std::vector<Question> readQuestions(const std::string &path)
{
    std::ifstream in(path);
    std::vector<Question> questions;
    std::string line;
    std::getline(in, line); // the heading
    while (std::getline(in, line)) {
        std::istringstream row(line);
        Question question;
        std::string skipped;
        row >> question.set >> skipped >> skipped >> question.file >> skipped >> skipped >>
            question.criticalPath >> question.lowerBound >> question.bestKnown;
        if (row)
            questions.push_back(question);
    }
    return questions;
}

double percentOver(int found, int reference)
{
    return 100.0 * (found - reference) / std::max(reference, 1);
}

const char *name(LevelFound::Stopped stopped)
{
    switch (stopped) {
    case LevelFound::Stopped::AtBound:
        return "at bound";
    case LevelFound::Stopped::Cancelled:
        return "cancelled";
    case LevelFound::Stopped::Spent:
        break;
    }
    return "spent";
}

bool solve(const std::string &folder, const Question &question, const LevelSearch &search,
           Summary &summary)
{
    const std::optional<Workload> workload = readSm(folder + "/" + question.file);
    if (!workload) {
        std::cerr << question.file << ": not a single mode file\n";
        return false;
    }
    // Of the processor, which other programs may want as well.
    const std::clock_t begin = std::clock();
    const LevelFound found = searchOrder(*workload, search);
    const double seconds = static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC;

    Levelling levelling(*workload);
    levelling.setOrder(found.order);
    const Levelled &plan = levelling.pass();
    const std::string faults = testing::LevelCheck(*workload).faults(plan, levelling.workedSlots());
    if (!faults.empty() || plan.end != found.end || found.end < question.lowerBound) {
        std::cerr << question.file << ": " << found.end << " periods, planned again " << plan.end
                  << ", at least " << question.lowerBound << '\n'
                  << faults;
        return false;
    }
    std::cout << question.file << '\t' << found.end << '\t' << question.criticalPath << '\t'
              << question.bestKnown << '\t' << seconds * 1e3 << '\t' << found.schedules << '\t'
              << name(found.stopped) << '\n';
    ++summary.instances;
    summary.equal += found.end <= question.bestKnown ? 1 : 0;
    summary.deviation += percentOver(found.end, question.bestKnown);
    summary.overCriticalPath += percentOver(found.end, question.criticalPath);
    summary.schedules += found.schedules;
    summary.seconds += seconds;
    return true;
}

int run(const std::vector<std::string> &arguments)
{
    std::string folder;
    std::string onlySet;
    LevelSearch search;
    search.schedules = 5000;
    for (std::size_t i = 0; i < arguments.size(); ++i) {
        const bool more = i + 1 < arguments.size();
        if (arguments[i] == "--schedules" && more)
            search.schedules = std::atoi(arguments[++i].c_str());
        else if (arguments[i] == "--seed" && more)
            search.seed = static_cast<std::uint64_t>(std::atoll(arguments[++i].c_str()));
        else if (arguments[i] == "--set" && more)
            onlySet = arguments[++i];
        else
            folder = arguments[i];
    }
    const std::vector<Question> questions = readQuestions(folder + "/best-known.tsv");
    if (questions.empty()) {
        std::cerr
            << "bench_psplib DIR [--schedules N] [--seed N] [--set NAME]: DIR holds the files "
               "and best-known.tsv\n";
        return 2;
    }
    std::cout << std::fixed << std::setprecision(3)
              << "instance\tmakespan\tcritical path\tbest known\tms\tschedules\tstopped\n";
    std::map<std::string, Summary> summaries;
    for (const Question &question : questions) {
        if ((onlySet.empty() || question.set == onlySet) &&
            !solve(folder, question, search, summaries[question.set]))
            return 1;
    }
    std::cout << "set\tinstances\tover best known %\tequal to best %\tover critical path %\t"
                 "schedules/s\n";
    for (const auto &[set, summary] : summaries) {
        if (summary.instances == 0)
            continue;
        std::cout << set << '\t' << summary.instances << '\t'
                  << summary.deviation / summary.instances << '\t'
                  << 100.0 * summary.equal / summary.instances << '\t'
                  << summary.overCriticalPath / summary.instances << '\t'
                  << static_cast<double>(summary.schedules) / summary.seconds << '\n';
    }
    return 0;
}

} // namespace
} // namespace ohmwright::plan::psplib

int main(int argc, char **argv)
{
    return ohmwright::plan::psplib::run({argv + 1, argv + argc});
}
