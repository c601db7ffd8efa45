mod edges;
mod forms;
mod releasers;
mod said;
mod standing;
mod table;
mod verdict;
