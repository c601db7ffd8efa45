//! Sources cited by the rules of `money` and `business`.

use crate::source::cite;

cite! {
    /// Mark-up, cost under a price, sales tax, discount, packs.
    CONTEMPORARY_MATHEMATICS = "openstax-contemporary-mathematics", Retrieved,
        "Rice University / OpenStax, Contemporary Mathematics, modules m00058 (discounts, markups \
           and sales tax), m00072: mark-up, cost under a price, sales tax, discount, packs";
    /// Unit price, mark-up, sales tax, commission, median, guests needed.
    PREALGEBRA = "openstax-prealgebra", Retrieved,
        "Rice University / OpenStax, Prealgebra 2e, modules m81303, m81304, m81307, m82478: unit \
           price, mark-up, sales tax, commission, median, guests needed";
    /// Contribution, break-even, target profit, margin of safety, overhead rate.
    MANAGERIAL_ACCOUNTING = "openstax-managerial-accounting", Retrieved,
        "Rice University / OpenStax, Principles of Accounting, Volume 2: Managerial Accounting, \
           modules m68115, m68116, m68120, m68127, m68135: contribution, break-even, target profit, \
           margin of safety, overhead rate";
    /// Tax in and out of a price.
    CALCULATING_VAT = "hmrc-calculating-vat", Retrieved,
        "HM Revenue & Customs, Calculating VAT for VAT-inclusive and VAT-exclusive prices, worked \
           examples at 20 % and 5 % (archived c. 2011-2014)";
    /// Flat, threshold and tiered commission.
    COMMISSION = "yale-commission", Retrieved,
        "Yale-New Haven Teachers Institute, unit 80.07.07, Solving problems by the hundreds, 1980, \
           examples 1-3: flat, threshold and tiered commission";
    /// Percentage increase and decrease.
    PERCENTAGES = "york-percentages", Retrieved,
        "University of York, MSc mathematics notes, Percentage increase and decrease, 2007";
    /// What belongs to the cost of a service.
    SALON_COSTS = "nz-28846", Retrieved,
        "New Zealand Qualifications Authority, unit standard 28846 v1, Demonstrate knowledge of \
           costs and financial KPIs for a salon, 2016: purpose, outcome 1 and its range";
    /// The elements of a cost.
    COSTING_A_SERVICE = "nz-costing-a-service", Retrieved,
        "Hair & Barber New Zealand, Costing a service (business practice guide), n.d.: the elements \
           of a cost, no worked figures";
    /// Hourly expenses of a business.
    HOURLY_EXPENSES = "au-psm502", Retrieved,
        "Service Skills Australia, SIBXPSM502A Manage treatment services and sales delivery, 2011: \
           hourly expenses of the business";
    /// Fixed and variable costs, targets, stock levels.
    STOCK_LEVELS = "au-sm501", Retrieved,
        "Service Skills Australia, WRHSM501A Manage hairdressing services and sales delivery, 2006: \
           fixed and variable costs, targets, stock levels";
    /// Contribution of each service.
    CHAIR_HOUR = "joa-1990", Retrieved,
        "Journal of Accountancy, How contribution margin analysis helped a salon, August 1990 \
           (opening text only): contribution of each service";
    /// What share of paid hours is productive in the trade.
    PRODUCTIVE_HOURS = "cch-productive-hours", Retrieved,
        "CCH, Hairdressing trade sector guide, n.d.: productive hours of 40 to 55 % typical, about \
           30 % at the low and 70 % at the high end";
    /// A quotation with time and cost.
    QUOTATION = "uk-ofqual-colour-correction", Retrieved,
        "Ofqual register, unit D/600/1010 Provide colour correction services, c. 2010, 1.11: a \
           quotation with time and cost";
    /// Currency codes and their minor units.
    ISO_4217 = "six-iso-4217", Library,
        "SIX (maintenance agency), ISO 4217 table A.1, current currencies and their minor units, \
           published 2026-01-01";
}
