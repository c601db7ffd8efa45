//! Wrappers of `foilwork::day`.

mod arrange;
mod planned;
mod share;
mod timeline;
mod underway;
mod work;

pub use timeline::Timeline;

crate::room::room! {
    /// The day at the chair: who does what when, in which order, and when the guest can leave.
    day {
        arrange { arrange, in_this_order }
        share { GuestOnFloor, SharedFloor, share_floor }
        timeline { FoilGroup, Piece, SectionTimes, Timeline }
        underway { OnHair, RestOfDay, go_on }
        work { Before, Floor, SectionWork }
    }
}
