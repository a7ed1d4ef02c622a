//! From one declaration: a record as written, its reader, its known keys and its schema.

/// Declares a mapping of a record: the struct, its field-by-field reader and its JSON Schema.
///
/// Every field is `Option<Field<T>>`: a field that is absent or faulty is `None`, so that the rest of
/// a faulty record can be checked all the same. Faults are counted by the reader.
///
/// Behind type and need of a key that takes a list may stand how many entries it has, such as `1..=3`: that is for the
/// schema alone; the catalogue checks it.
///
/// The doc comment of a key is also its text in the schema and in `fittingcards explain`: its meaning, and lines
/// `Default:` and `Example:`, as `KeyDoc` takes them apart.
macro_rules! record {
    ($(#[doc = $about:literal])+ $name:ident ($called:literal) {
        $( $(#[doc = $doc:literal])+ $field:ident $(as $key:literal)?: $type:ty, $need:ident $(, $entries:expr)?; )+
    }) => {
        $(#[doc = $about])+
        #[derive(Debug, Clone)]
        pub struct $name {
            $( $(#[doc = $doc])+ pub $field: Option<$crate::records::Field<$type>>, )+
        }

        impl $name {
            /// Its keys, in the order of the declaration.
            pub const KEYS: &'static [$crate::records::Key] = &[$($crate::records::Key {
                name: $crate::records::record::key!($field $($key)?),
                need: $crate::records::Need::$need,
            }),+];
        }

        impl $crate::records::Read for $name {
            fn read(
                node: &$crate::records::Node,
                reader: &mut $crate::records::Reader<'_>,
            ) -> Option<Self> {
                let entries = reader.mapping(node, $called, Self::KEYS)?;
                Some(Self {
                    $($field: reader.field(entries, $crate::records::record::key!($field $($key)?)),)+
                })
            }
        }

        impl schemars::JsonSchema for $name {
            fn schema_name() -> std::borrow::Cow<'static, str> {
                stringify!($name).into()
            }

            fn json_schema(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
                let mut object = $crate::records::schema::Object::new(concat!($($about),+));
                $(object.property(
                    $crate::records::record::key!($field $($key)?),
                    concat!($($doc, "\n"),+),
                    generator.subschema_for::<$type>(),
                    $crate::records::Need::$need,
                )$(.entries($entries))?;)+
                object.finish()
            }
        }
    };
}

/// Declares a mapping with exactly one of several keys: an enum, its reader and its JSON Schema.
macro_rules! one_of {
    ($(#[doc = $about:literal])+ $name:ident ($called:literal) {
        $( $(#[doc = $doc:literal])+ $variant:ident = $key:literal: $type:ty; )+
    }) => {
        $(#[doc = $about])+
        #[derive(Debug, Clone)]
        pub enum $name {
            $( $(#[doc = $doc])+ $variant($crate::records::Field<$type>), )+
        }

        impl $crate::records::Read for $name {
            fn read(
                node: &$crate::records::Node,
                reader: &mut $crate::records::Reader<'_>,
            ) -> Option<Self> {
                const KEYS: &[&str] = &[$($key),+];
                let (key, entries) = reader.only_entry(node, $called, KEYS)?;
                match key {
                    $($key => reader.field(entries, $key).map(Self::$variant),)+
                    _ => None,
                }
            }
        }

        impl schemars::JsonSchema for $name {
            fn schema_name() -> std::borrow::Cow<'static, str> {
                stringify!($name).into()
            }

            fn json_schema(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
                let mut object = $crate::records::schema::Object::new(concat!($($about),+));
                $(object.property(
                    $key,
                    concat!($($doc, "\n"),+),
                    generator.subschema_for::<$type>(),
                    $crate::records::Need::Optional,
                );)+
                object.with_one_property()
            }
        }
    };
}

/// The key of a field: stated, else the field's own name.
macro_rules! key {
    ($field:ident) => {
        stringify!($field)
    };
    ($field:ident $key:literal) => {
        $key
    };
}

pub(super) use {key, one_of, record};
