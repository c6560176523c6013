// SPDX-License-Identifier: GPL-3.0-or-later
// A Parts page on a book in memory, with an outside that answers what the test says.
#pragma once

#include "core/parts/log_part.h"
#include "core/parts/questions.h"
#include "tests/support/fake_outside.h"
#include "tests/support/test_book.h"
#include "tests/ui/driving.h"
#include "ui/parts/log_sheet.h"
#include "ui/parts/part_detail.h"
#include "ui/parts/parts_list.h"
#include "ui/parts/parts_page.h"

#include <QAbstractItemModel>
#include <QComboBox>
#include <QLineEdit>
#include <QPushButton>
#include <QSignalSpy>
#include <QTableView>

#include <memory>

namespace ohmwright::ui {

class APartsPage : public testing::Test
{
protected:
    Id<Circuit> circuit(const char *name, const char *worst, CurrentKind kind = CurrentKind::Dc)
    {
        Circuit row;
        row.name = QString::fromLatin1(name);
        row.key = keyFrom(row.name);
        row.current = kind;
        row.worstVoltage = amount(worst);
        return book.add(row);
    }

    Id<Part> part(const char *name, PartState state = PartState::InHand,
                  PartKind kind = PartKind::Unit)
    {
        Part row = namedPart(QString::fromLatin1(name), state, kind);
        row.key = keyFrom(row.name);
        return book.add(row);
    }

    void connectPart(Id<Part> which, Id<Circuit> to)
    {
        Connection row;
        row.part = which;
        row.circuit = to;
        book.add(row);
    }

    void open()
    {
        page = std::make_unique<PartsPage>(*book, themed.theme, outside);
        page->resize(1180, 760);
        driving::showActive(*page);
    }

    QAbstractItemModel &model() { return *page->list().table().model(); }

    // The names in the first column, headings included.
    QStringList names()
    {
        QStringList found;
        for (int row = 0; row < model().rowCount(); ++row)
            found << model().index(row, 0).data().toString();
        return found;
    }

    // The control a screen reader would find by that name.
    template <class W>
    W *control(const QString &name, QWidget *in = nullptr)
    {
        QApplication::processEvents(); // rows that were filled anew are shown by then
        for (W *widget : (in ? in : page.get())->template findChildren<W *>())
            if (widget->isVisible() && driving::spoken(widget) == name)
                return widget;
        ADD_FAILURE() << "no control named " << name.toStdString();
        return nullptr;
    }

    driving::Themed themed;
    TestBook book;
    FakeOutside outside;
    std::unique_ptr<PartsPage> page;
};

} // namespace ohmwright::ui
