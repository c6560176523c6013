// SPDX-License-Identifier: GPL-3.0-or-later
// Parts of an option that is not planned with are not judged; deciding turns that round.
#include "core/verdicts/build_parts.h"
#include "core/verdicts/judge_book.h"
#include "tests/support/test_book.h"

namespace ohmwright {
namespace {

TEST(ChoicesInChecks, onlyPartsThatArePlannedWithAreOfTheBuild)
{
    TestBook book;
    Choice choice;
    choice.question = QStringLiteral("Heater A or B");
    const Id<Choice> id = book.add(choice);
    Id<ChoiceOption> options[2];
    Id<Part> parts[2];
    for (int i = 0; i < 2; ++i) {
        ChoiceOption option;
        option.choice = id;
        option.key = QStringLiteral("option-%1").arg(i);
        option.name = option.key;
        options[i] = book.add(option);
        Part part = namedPart(QStringLiteral("Heater %1").arg(i), PartState::Wanted);
        part.role = PartRole::Heater;
        part.option = options[i];
        parts[i] = book.add(part);
    }
    const auto planned = [&] {
        return onlyPartOfRole(book.records(), PartRole::Heater);
    };
    ASSERT_NE(planned(), nullptr);
    EXPECT_EQ(planned()->id, parts[0]);
    Choice taken = *book.records().find(id);
    taken.taken = options[1];
    OHMWRIGHT_ASSERT_OK(book->edit(QStringLiteral("decide"), [&] { return book->update(taken); }));
    ASSERT_NE(planned(), nullptr);
    EXPECT_EQ(planned()->id, parts[1]);
}

} // namespace
} // namespace ohmwright
