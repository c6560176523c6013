// SPDX-License-Identifier: GPL-3.0-or-later
// A section of the part detail, and one made of lines to edit. Each reads the part anew when told;
// each change is an edit of the book, and what the book refuses is told beside the line.
#pragma once

#include "core/book/book.h"
#include "ui/parts/part_words.h"
#include "ui/shell/message_strip.h"
#include "ui/shell/outside.h"
#include "ui/shell/theme.h"

#include <QWidget>

#include <functional>
#include <vector>

class QLabel;
class QLayout;
class QLineEdit;
class QVBoxLayout;

namespace ohmwright::ui {

class Field;
class SectionTitle;

// What every section works with.
struct DetailGround
{
    Book &book;
    const Theme &theme;
    Outside &outside;
};

// A label of words that may change, in the theme's letters.
QLabel *makeWords(const Theme &theme, const QString &text, Lettering lettering = Lettering::Body,
                  bool mute = false);
// Takes out and deletes, once the event in hand is over, all a layout holds.
void emptyLayout(QLayout &layout);

class DetailSection : public QWidget
{
    Q_OBJECT

public:
    DetailSection(const DetailGround &ground, const QString &title, QWidget *parent = nullptr);

    // Shows `part`, or shows it again after the book changed; hides itself if it has nothing to
    // say.
    void read(const Part &part);

signals:
    void said(const QString &sentence, ohmwright::ui::Tone tone);
    void taskWanted(const QString &key);
    void partWanted(ohmwright::Id<ohmwright::Part> part);

protected:
    virtual void fill(const Part &part, bool another) = 0; // another: than the one shown before

    [[nodiscard]] Book &book() const { return m_ground.book; }
    [[nodiscard]] const Records &records() const { return m_ground.book.records(); }
    [[nodiscard]] const Theme &theme() const { return m_ground.theme; }
    [[nodiscard]] const DetailGround &ground() const { return m_ground; }
    [[nodiscard]] QVBoxLayout &column() { return *m_column; }
    [[nodiscard]] SectionTitle &title() { return *m_title; }
    [[nodiscard]] Id<Part> part() const { return m_part; }
    [[nodiscard]] const Part *partNow() const { return records().find(m_part); }
    // A list inside the section that is emptied and filled at each reading.
    QVBoxLayout *addList(int spacing = 6);
    // One edit of the part shown. A problem goes to `field`, or to the message strip without one.
    bool editPart(const QString &what, const std::function<Outcome(Part &)> &change,
                  Field *field = nullptr);
    bool tell(const Outcome &outcome, Field *field = nullptr);

private:
    DetailGround m_ground;
    QVBoxLayout *m_column;
    SectionTitle *m_title;
    Id<Part> m_part;
};

// What was typed into a line; the key is set where it is one of the known names.
struct Typed
{
    QString text;
    QString key;
};

// A line that edits something of a part.
struct PartField
{
    const char *where; // the record's field name
    QString label;
    QString hint;
    std::function<QString(const Records &, const Part &)> read;   // text, or key of a known name
    std::function<Outcome(Book &, Part &, const Typed &)> write;  // within the edit
    std::function<std::vector<KnownName>(const Records &)> known; // none: a plain line
};

class FieldsSection : public DetailSection
{
    Q_OBJECT

public:
    // Two to a row, in the order given.
    FieldsSection(const DetailGround &ground, const QString &title, std::vector<PartField> fields,
                  QWidget *parent = nullptr);

protected:
    void fill(const Part &part, bool another) override;

private:
    struct Line
    {
        PartField field;
        Field *widget;
        QLineEdit *edit;
        QString shown; // as last read from the book
    };

    void commit(std::size_t index);

    std::vector<Line> m_lines;
};

std::vector<PartField> describingFields();
std::vector<PartField> buyingFields();
std::vector<PartField> warrantyFields();
std::vector<PartField> damageFields();

} // namespace ohmwright::ui
