// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/repeated_inputs.h"

#include "core/sheet/check_words.h"

#include <QStringList>

#include <algorithm>
#include <optional>

namespace ohmwright::sections {

namespace {

using Inputs = std::vector<const CheckInput *>;

constexpr std::size_t kMostColumns = 4;
constexpr std::size_t kFewestItems = 3;

struct Shape
{
    QStringList symbols;
    std::vector<std::size_t> starts; // of each thing's inputs
    std::size_t end = 0;
};

// Each thing begins with the first one's symbol and tells no other symbols than those before it.
Shape shapeFrom(const Inputs &inputs, std::size_t first)
{
    Shape shape;
    const QString leading = inputs[first]->symbol;
    if (leading.isEmpty())
        return shape;
    std::size_t at = first;
    while (at < inputs.size() && inputs[at]->symbol == leading) {
        std::size_t next = at + 1;
        QStringList own{leading};
        while (next < inputs.size() && own.size() < static_cast<int>(kMostColumns)) {
            const QString &symbol = inputs[next]->symbol;
            const bool fresh = shape.starts.empty() || shape.symbols.contains(symbol);
            if (symbol.isEmpty() || own.contains(symbol) || !fresh)
                break;
            own << symbol;
            ++next;
        }
        if (shape.starts.empty())
            shape.symbols = own;
        shape.starts.push_back(at);
        at = next;
    }
    shape.end = at;
    return shape;
}

// What names differ by, and what they have in common around it, whole words each.
struct Split
{
    QStringList middles;
    QString around;
};

Split splitNames(const QStringList &names)
{
    std::vector<QStringList> words;
    for (const QString &name : names)
        words.push_back(name.split(u' '));
    const auto shortest =
        std::min_element(words.begin(), words.end(), [](const auto &a, const auto &b) {
            return a.size() < b.size();
        })->size();
    const auto sharedUpTo = [&words, shortest](qsizetype taken, auto wordOf) {
        qsizetype shared = 0;
        while (shared + taken < shortest &&
               std::all_of(words.begin(), words.end(), [&](const QStringList &one) {
                   return wordOf(one, shared) == wordOf(words.front(), shared);
               }))
            ++shared;
        return shared;
    };
    const qsizetype before =
        sharedUpTo(0, [](const QStringList &one, qsizetype i) { return one[i]; });
    const qsizetype after = sharedUpTo(
        before, [](const QStringList &one, qsizetype i) { return one[one.size() - 1 - i]; });
    Split split;
    for (const QStringList &one : words)
        split.middles << one.mid(before, one.size() - before - after).join(u' ');
    QStringList around = words.front().mid(0, before);
    if (!around.isEmpty() && around.back() == QStringLiteral("of"))
        around.removeLast();
    around += words.front().mid(words.front().size() - after);
    split.around = around.join(u' ');
    return split;
}

// Nothing if the names do not tell what each is of.
RepeatedInputs namedAlike(const Inputs &inputs, std::size_t first, const Shape &shape)
{
    RepeatedInputs same;
    same.count = shape.end - first;
    for (std::size_t i = 0; i < shape.starts.size(); ++i) {
        const std::size_t end = i + 1 < shape.starts.size() ? shape.starts[i + 1] : shape.end;
        RepeatedInputs::Item item;
        item.inputs.resize(static_cast<std::size_t>(shape.symbols.size()));
        for (std::size_t at = shape.starts[i]; at < end; ++at)
            item.inputs[static_cast<std::size_t>(shape.symbols.indexOf(inputs[at]->symbol))] =
                inputs[at];
        same.items.push_back(std::move(item));
    }
    for (qsizetype c = 0; c < shape.symbols.size(); ++c) {
        QStringList names;
        std::vector<std::size_t> of;
        for (std::size_t i = 0; i < same.items.size(); ++i)
            if (const CheckInput *input = same.items[i].inputs[static_cast<std::size_t>(c)]) {
                names << input->origin.name;
                of.push_back(i);
            }
        const Split split = splitNames(names);
        same.columns.push_back({shape.symbols[c], split.around});
        for (std::size_t i = 0; i < of.size(); ++i) {
            RepeatedInputs::Item &item = same.items[of[i]];
            const QString &name = split.middles[static_cast<qsizetype>(i)];
            if (name.isEmpty())
                continue; // the same name for all: it is told by the others what of
            if (!item.name.isEmpty() && item.name != name)
                return {};
            item.name = name;
            item.place = placeOf(item.inputs[static_cast<std::size_t>(c)]->origin.path);
        }
    }
    const bool named = std::all_of(same.items.begin(), same.items.end(),
                                   [](const auto &item) { return !item.name.isEmpty(); });
    return named ? same : RepeatedInputs();
}

} // namespace

RepeatedInputs repeatedFrom(const Inputs &inputs, std::size_t first)
{
    Shape shape = shapeFrom(inputs, first);
    if (shape.symbols.size() < 2)
        return {};
    // what comes last may be named otherwise: then it is a row of its own
    while (shape.starts.size() >= kFewestItems) {
        RepeatedInputs same = namedAlike(inputs, first, shape);
        if (!same.items.empty())
            return same;
        shape.end = shape.starts.back();
        shape.starts.pop_back();
    }
    return {};
}

} // namespace ohmwright::sections
