// SPDX-License-Identifier: GPL-3.0-or-later
// The sheet to log a part on: stands beside the table, not over it, and is filled in with the
// keyboard from top to bottom. Enter saves and clears it for the next part, with seller, donor and
// day kept; Escape closes it and keeps what was typed.
//
// It asks for what a circuit, a check or the build sheet will ask for, and for nothing else.
#pragma once

#include "core/book/book.h"
#include "core/parts/log_part.h"
#include "core/parts/questions.h"
#include "ui/shell/outside.h"

#include <QImage>
#include <QWidget>

#include <map>
#include <optional>
#include <vector>

class QComboBox;
class QLabel;
class QLineEdit;
class QPushButton;
class QScrollArea;
class QVBoxLayout;

namespace ohmwright::ui {

class DropArea;
class Field;
class PickOrNew;
class RatingLine;
class StateMark;
class Theme;

class LogSheet : public QWidget
{
    Q_OBJECT

public:
    LogSheet(Book &book, const Theme &theme, Outside &outside, QWidget *parent = nullptr);

    // Offers what the book knows by now and puts the focus on the name.
    void begin();
    // As Enter does. False, with the problem at its field and the focus there, if it cannot be.
    bool save();

signals:
    void logged(ohmwright::Id<ohmwright::Part> part);
    void closed();

protected:
    void keyPressEvent(QKeyEvent *event) override;
    bool eventFilter(QObject *watched, QEvent *event) override;

private:
    struct Photo
    {
        LogPhoto photo;
        QImage small;
    };

    Field *addField(QVBoxLayout &column, const char *where, const QString &label, QWidget *editor,
                    const QString &hint = {});
    QWidget *pair(QWidget *left, QWidget *right);
    void buildPurchase(QVBoxLayout &column);
    void buildFigures(QVBoxLayout &column);
    void followState();
    void followPrice();
    [[nodiscard]] std::optional<Rate> knownRate() const; // of the price's currency, that day
    void doubtRate();
    void followOrder();
    void showAsked();
    void judge(); // what is typed against the circuit it is meant for
    void showMore(bool more);
    void offerKnown();
    void clearForNext();
    void takeFiles(const QStringList &paths);
    void takePicture(const QImage &picture);
    void showPhotos();

    void clearProblems();
    void refuse(const Problem &problem);
    [[nodiscard]] Result<LogEntry> readEntry();
    [[nodiscard]] Outcome readSource(LogEntry &entry);
    [[nodiscard]] Result<std::optional<LogPrice>> readPrice(LogEntry &entry);
    [[nodiscard]] Outcome readRatings(LogEntry &entry);
    [[nodiscard]] Result<std::optional<Money>> readMoney(QLineEdit &line, const char *where,
                                                         Currency fallback);
    [[nodiscard]] Result<ThereOrNew<Seller>> readSeller();
    [[nodiscard]] Result<QDate> day() const;
    [[nodiscard]] PartState state() const;

    Book &m_book;
    const Theme &m_theme;
    Outside &m_outside;
    std::map<QString, Field *> m_fields; // by a Problem's `where`
    StateMark *m_verdict = nullptr;
    QLabel *m_verdictText = nullptr;
    QScrollArea *m_scroll = nullptr;
    QLineEdit *m_name = nullptr;
    QComboBox *m_kind = nullptr;
    QComboBox *m_state = nullptr;
    PickOrNew *m_seller = nullptr;
    QComboBox *m_sellerKind = nullptr;
    PickOrNew *m_donor = nullptr;
    QLineEdit *m_price = nullptr;
    QLineEdit *m_rate = nullptr;
    QLineEdit *m_freight = nullptr;
    QPushButton *m_moreButton = nullptr;
    QWidget *m_more = nullptr;
    QLineEdit *m_duty = nullptr;
    QLineEdit *m_tax = nullptr;
    QLineEdit *m_core = nullptr;
    QLineEdit *m_count = nullptr;
    PickOrNew *m_order = nullptr;
    QLineEdit *m_on = nullptr;
    QLineEdit *m_warranty = nullptr;
    PickOrNew *m_circuit = nullptr;
    QVBoxLayout *m_askedLayout = nullptr;
    std::vector<RatingLine *> m_asked;
    QString m_askedFor; // key of the circuit whose questions stand there
    RatingLine *m_free = nullptr;
    QLineEdit *m_serial = nullptr;
    QLineEdit *m_place = nullptr;
    QLineEdit *m_condition = nullptr;
    DropArea *m_drop = nullptr;
    std::vector<Photo> m_photos;
    QLabel *m_told = nullptr;
    bool m_rateTyped = false;
};

} // namespace ohmwright::ui
