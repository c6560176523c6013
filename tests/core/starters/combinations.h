// SPDX-License-Identifier: GPL-3.0-or-later
// Every way to answer a starter's questions.
#pragma once

#include "core/starters/starters.h"

#include <vector>

namespace ohmwright {

inline std::vector<StarterAnswers> everyCombination(const Starter &starter)
{
    std::vector<StarterAnswers> all{{}};
    for (const StarterQuestion &question : starter.questions) {
        std::vector<StarterAnswers> longer;
        for (const StarterAnswers &begun : all)
            for (const StarterAnswer &answer : question.answers) {
                longer.push_back(begun);
                longer.back().insert(question.key, answer.key);
            }
        all = std::move(longer);
    }
    return all;
}

// Every two answers together, the rest as usual: what one condition asks about is rarely more.
inline std::vector<StarterAnswers> everyPair(const Starter &starter)
{
    std::vector<StarterAnswers> all;
    const auto &questions = starter.questions;
    for (std::size_t i = 0; i < questions.size(); ++i)
        for (std::size_t j = i + 1; j < questions.size(); ++j)
            for (const StarterAnswer &one : questions[i].answers)
                for (const StarterAnswer &other : questions[j].answers)
                    all.push_back({{questions[i].key, one.key}, {questions[j].key, other.key}});
    return all;
}

inline std::string saying(const StarterAnswers &answers)
{
    QStringList words;
    for (auto it = answers.begin(); it != answers.end(); ++it)
        words << it.key() + u'=' + it.value();
    return words.join(u' ').toStdString();
}

inline StarterBook sampleBook(Currency currency = Currency())
{
    return {QStringLiteral("Green van"), currency, QDate(2026, 6, 15)};
}

} // namespace ohmwright
