//! The compiled submodules: one for each room, in it one for each file of wrappers.

use pyo3::{
    prelude::*,
    types::{PyList, PyModule, PyType},
};

/// Declares the compiled module of a room: each file of wrappers with the names that it gives to Python.
///
/// A file `strength` becomes the module `foilwork._native.<room>._strength`, which its stub `_strength.pyi` describes.
/// All its names are names of the room as well, and belong to the public module `foilwork.<room>`.
macro_rules! room {
    ($(#[$doc:meta])* $room:ident { $($file:ident { $($name:ident),+ $(,)? })+ }) => {
        $(#[$doc])*
        #[pyo3::pymodule(submodule)]
        #[allow(clippy::module_inception)]
        pub mod $room {
            $(
                #[pyo3::pymodule]
                mod $file {
                    #[pymodule_export]
                    use super::super::$file::{$($name),+};
                }
            )+
        }
    };
}
pub(crate) use room;

/// Makes ready what was declared as a room: its names where `import` and `pickle` look for them.
///
/// A submodule is bound by no more than its last name; here each file gets its whole one and its place in `sys.modules`, and
/// its functions say where they are public. Classes are declared with that.
pub fn opened(room: &Bound<'_, PyModule>, full: &str) -> PyResult<()> {
    let public = full.replace("._native", "");
    let files = submodules(room)?;
    for (file, _) in &files {
        room.delattr(file)?;
    }
    room.setattr("__all__", PyList::empty(room.py()))?;
    for (file, module) in &files {
        rename(module, &format!("{full}._{file}"))?;
        for entry in module.index()? {
            let value = module.getattr(entry.cast()?)?;
            if !value.is_instance_of::<PyType>() {
                value.setattr("__module__", &public)?;
            }
            room.add(entry.cast()?, value)?;
        }
    }
    room.setattr("__name__", full)
}

fn rename(module: &Bound<'_, PyModule>, full: &str) -> PyResult<()> {
    module.setattr("__name__", full)?;
    module.py().import("sys")?.getattr("modules")?.set_item(full, module)
}

/// The modules in a module, by the names they are bound to.
fn submodules<'py>(module: &Bound<'py, PyModule>) -> PyResult<Vec<(String, Bound<'py, PyModule>)>> {
    let bound = module.dict().into_iter();
    bound
        .filter_map(|(name, value)| Some((name, value.cast_into().ok()?)))
        .map(|(name, module)| Ok((name.extract()?, module)))
        .collect()
}
