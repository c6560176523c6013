// SPDX-License-Identifier: GPL-3.0-or-later
// The sections of the part detail that are more than lines to edit.
#pragma once

#include "core/parts/attachments.h"
#include "core/parts/questions.h"
#include "ui/cards/attachment_opener.h"
#include "ui/parts/detail_section.h"

#include <QHash>
#include <QImage>

#include <memory>

class QGridLayout;
class QPushButton;

namespace ohmwright::ui {

class ChipRow;
class DropArea;
class EntryForm;
class RatingsEditor;
class WrapLayout;

// Its state, the moves that may come next, and those it has made.
class LifeSection : public DetailSection
{
    Q_OBJECT

public:
    explicit LifeSection(const DetailGround &ground);

protected:
    void fill(const Part &part, bool another) override;

private:
    void move(PartState to);

    WrapLayout *m_buttons;
    QLineEdit *m_note;
    Field *m_noteField;
    QLineEdit *m_on;
    Field *m_onField;
    QVBoxLayout *m_moves;
};

class QuestionsSection : public DetailSection
{
    Q_OBJECT

public:
    explicit QuestionsSection(const DetailGround &ground);
    // Of all parts; those of the one shown are told the next time it is read.
    void setAskedByChecks(std::vector<Question> questions);

protected:
    void fill(const Part &part, bool another) override;

private:
    QVBoxLayout *m_list;
    std::vector<Question> m_askedByChecks;
};

// Every figure with the value in force and why; settling; a new rating.
class RatingsSection : public DetailSection
{
    Q_OBJECT

public:
    explicit RatingsSection(const DetailGround &ground);

protected:
    void fill(const Part &part, bool another) override;

private:
    RatingsEditor *m_editor;
};

// Circuits it is connected to, and which branch of each it sits in.
class CircuitsSection : public DetailSection
{
    Q_OBJECT

public:
    explicit CircuitsSection(const DetailGround &ground);

protected:
    void fill(const Part &part, bool another) override;

private:
    void connectTo(const QStringList &keys);
    void fillBranches();
    void sitIn(Id<Connection> connection, Id<Branch> branch);

    QVBoxLayout *m_branches;
    ChipRow *m_chips = nullptr;
    QStringList m_offered;
    QLabel *m_none;
    bool m_reading = false;
};

// Seller, order and what it cost landed.
class SourceSection : public DetailSection
{
    Q_OBJECT

public:
    explicit SourceSection(const DetailGround &ground);

protected:
    void fill(const Part &part, bool another) override;

private:
    void addFigure(int row, const QString &what, const QString &first, const QString &second,
                   bool sum = false);

    QLabel *m_words;
    QGridLayout *m_grid;
};

// Warranty, return and claim; opening, which may end them, with the checks to do before.
class DeadlinesSection : public DetailSection
{
    Q_OBJECT

public:
    explicit DeadlinesSection(const DetailGround &ground);
    // Unfolds what is read and told before a unit is opened; nothing if it cannot be.
    void beginOpening();

protected:
    void fill(const Part &part, bool another) override;

private:
    void recordOpening();

    QVBoxLayout *m_list;
    QPushButton *m_open;
    QWidget *m_form;
    QLineEdit *m_reason;
    Field *m_reasonField;
};

class StockSection : public DetailSection
{
    Q_OBJECT

public:
    explicit StockSection(const DetailGround &ground);

protected:
    void fill(const Part &part, bool another) override;

private:
    void change(int sign);
    void setLeast();

    QLabel *m_words;
    QLineEdit *m_amount;
    Field *m_amountField;
    QPushButton *m_take;
    QLineEdit *m_least;
    Field *m_leastField;
};

// What it sits in, what sits in it, and what replaces it beside it.
class AssemblySection : public DetailSection
{
    Q_OBJECT

public:
    explicit AssemblySection(const DetailGround &ground);

protected:
    void fill(const Part &part, bool another) override;

private:
    void compare(const Part &old, const Part &next);

    QVBoxLayout *m_list;
};

class PicturesSection : public DetailSection
{
    Q_OBJECT

public:
    explicit PicturesSection(const DetailGround &ground);

protected:
    void fill(const Part &part, bool another) override;

private:
    void takeFiles(const QStringList &paths);
    void takePicture(const QImage &picture);
    void keep(const std::vector<NewFile> &files);
    void open(Id<Attachment> attachment);
    [[nodiscard]] QImage thumbnail(const Attachment &attachment);

    Outcome addLinkTyped();

    QGridLayout *m_grid;
    QVBoxLayout *m_links;
    EntryForm *m_link;
    DropArea *m_drop;
    QHash<QString, QImage> m_thumbnails; // by SHA-256
    AttachmentOpener m_opener;
};

} // namespace ohmwright::ui
