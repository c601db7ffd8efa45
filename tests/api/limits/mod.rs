mod forms;
mod releasers;
mod standing;
mod table;
mod verdict;
