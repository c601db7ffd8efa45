//! Sources cited by the `money` rules.

use crate::source::{Citation, Consulted};

/// In the order of the register.
pub const CITATIONS: &[Citation] = &[
    CONTEMPORARY_MATHEMATICS,
    PREALGEBRA,
    MANAGERIAL_ACCOUNTING,
    CALCULATING_VAT,
    COMMISSION,
    PERCENTAGES,
    SALON_COSTS,
    COSTING_A_SERVICE,
    HOURLY_EXPENSES,
    STOCK_LEVELS,
    CHAIR_HOUR,
    PRODUCTIVE_HOURS,
    QUOTATION,
    ISO_4217,
];

/// Mark-up, cost under a price, sales tax, discount, packs.
pub const CONTEMPORARY_MATHEMATICS: Citation = Citation {
    id: "openstax-contemporary-mathematics",
    text: "Rice University / OpenStax, Contemporary Mathematics, modules m00058 (discounts, markups \
           and sales tax), m00072: mark-up, cost under a price, sales tax, discount, packs",
    consulted: Consulted::Retrieved,
};

/// Unit price, mark-up, sales tax, commission, median, clients needed.
pub const PREALGEBRA: Citation = Citation {
    id: "openstax-prealgebra",
    text: "Rice University / OpenStax, Prealgebra 2e, modules m81303, m81304, m81307, m82478: unit \
           price, mark-up, sales tax, commission, median, clients needed",
    consulted: Consulted::Retrieved,
};

/// Contribution, break-even, target profit, margin of safety, overhead rate.
pub const MANAGERIAL_ACCOUNTING: Citation = Citation {
    id: "openstax-managerial-accounting",
    text: "Rice University / OpenStax, Principles of Accounting, Volume 2: Managerial Accounting, \
           modules m68115, m68116, m68120, m68127, m68135: contribution, break-even, target profit, \
           margin of safety, overhead rate",
    consulted: Consulted::Retrieved,
};

/// Tax in and out of a price.
pub const CALCULATING_VAT: Citation = Citation {
    id: "hmrc-calculating-vat",
    text: "HM Revenue & Customs, Calculating VAT for VAT-inclusive and VAT-exclusive prices, worked \
           examples at 20 % and 5 % (archived c. 2011-2014)",
    consulted: Consulted::Retrieved,
};

/// Flat, threshold and tiered commission.
pub const COMMISSION: Citation = Citation {
    id: "yale-commission",
    text: "Yale-New Haven Teachers Institute, unit 80.07.07, Solving problems by the hundreds, 1980, \
           examples 1-3: flat, threshold and tiered commission",
    consulted: Consulted::Retrieved,
};

/// Percentage increase and decrease.
pub const PERCENTAGES: Citation = Citation {
    id: "york-percentages",
    text: "University of York, MSc mathematics notes, Percentage increase and decrease, 2007",
    consulted: Consulted::Retrieved,
};

/// What belongs to the cost of a service.
pub const SALON_COSTS: Citation = Citation {
    id: "nz-28846",
    text: "New Zealand Qualifications Authority, unit standard 28846 v1, Demonstrate knowledge of \
           costs and financial KPIs for a salon, 2016: purpose, outcome 1 and its range",
    consulted: Consulted::Retrieved,
};

/// The elements of a cost.
pub const COSTING_A_SERVICE: Citation = Citation {
    id: "nz-costing-a-service",
    text: "Hair & Barber New Zealand, Costing a service (business practice guide), n.d.: the elements \
           of a cost, no worked figures",
    consulted: Consulted::Retrieved,
};

/// Hourly expenses of a business.
pub const HOURLY_EXPENSES: Citation = Citation {
    id: "au-psm502",
    text: "Service Skills Australia, SIBXPSM502A Manage treatment services and sales delivery, 2011: \
           hourly expenses of the business",
    consulted: Consulted::Retrieved,
};

/// Fixed and variable costs, targets, stock levels.
pub const STOCK_LEVELS: Citation = Citation {
    id: "au-sm501",
    text: "Service Skills Australia, WRHSM501A Manage hairdressing services and sales delivery, 2006: \
           fixed and variable costs, targets, stock levels",
    consulted: Consulted::Retrieved,
};

/// Contribution of each service.
pub const CHAIR_HOUR: Citation = Citation {
    id: "joa-1990",
    text: "Journal of Accountancy, How contribution margin analysis helped a salon, August 1990 \
           (opening text only): contribution of each service",
    consulted: Consulted::Retrieved,
};

/// What share of paid hours is productive in the trade.
pub const PRODUCTIVE_HOURS: Citation = Citation {
    id: "cch-productive-hours",
    text: "CCH, Hairdressing trade sector guide, n.d.: productive hours of 40 to 55 % typical, about \
           30 % at the low and 70 % at the high end",
    consulted: Consulted::Retrieved,
};

/// A quotation with time and cost.
pub const QUOTATION: Citation = Citation {
    id: "uk-ofqual-colour-correction",
    text: "Ofqual register, unit D/600/1010 Provide colour correction services, c. 2010, 1.11: a \
           quotation with time and cost",
    consulted: Consulted::Retrieved,
};

/// Currency codes and their minor units.
pub const ISO_4217: Citation = Citation {
    id: "six-iso-4217",
    text: "SIX (maintenance agency), ISO 4217 table A.1, current currencies and their minor units, \
           published 2026-01-01",
    consulted: Consulted::Library,
};
