// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/bench/psplib/sm_file.h"

#include <cstddef>
#include <fstream>
#include <sstream>
#include <utility>
#include <vector>

namespace ohmwright::plan::psplib {

namespace {

std::vector<int> numbers(const std::string &line)
{
    std::istringstream in(line);
    std::vector<int> result;
    for (int number = 0; in >> number;)
        result.push_back(number);
    return result;
}

bool startsWith(const std::string &line, const char *text)
{
    return line.rfind(text, 0) == 0;
}

} // namespace

std::optional<Workload> readSm(const std::string &path)
{
    std::ifstream in(path);
    enum class Part { Head, Links, Work, Capacity } part = Part::Head;
    std::vector<Activity> activities;
    std::vector<int> capacity;
    const auto known = [&activities](int job) {
        if (job < 1)
            return false;
        if (activities.size() < static_cast<std::size_t>(job))
            activities.resize(static_cast<std::size_t>(job));
        return true;
    };
    for (std::string line; std::getline(in, line);) {
        if (startsWith(line, "PRECEDENCE"))
            part = Part::Links;
        else if (startsWith(line, "REQUESTS"))
            part = Part::Work;
        else if (startsWith(line, "RESOURCEAVAILABILITIES"))
            part = Part::Capacity;
        const std::vector<int> row = numbers(line); // none in headings and rules
        if (row.empty() || part == Part::Head)
            continue;
        if (part == Part::Capacity) {
            capacity = row;
            continue;
        }
        if (row.size() < 3 || !known(row[0]))
            return std::nullopt;
        const auto job = static_cast<std::size_t>(row[0] - 1);
        if (part == Part::Links) { // job, modes, how many, successors
            for (std::size_t i = 3; i < row.size(); ++i) {
                if (!known(row[i]))
                    return std::nullopt;
                activities[static_cast<std::size_t>(row[i] - 1)].after.push_back(job);
            }
        } else { // job, mode, periods, requests
            activities[job].work = row[2];
            activities[job].demand.assign(row.begin() + 3, row.end());
            activities[job].manner = Manner::Unbroken;
        }
    }
    if (activities.empty() || capacity.empty())
        return std::nullopt;
    return Workload{Timeline{{Slot{}}, {capacity}, 0, 1}, {}, std::move(activities)};
}

} // namespace ohmwright::plan::psplib
