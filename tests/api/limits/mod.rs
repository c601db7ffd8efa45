mod forms;
mod releasers;
mod table;
mod verdict;
